#include "project/migrate.h"

#include "base/error.h"
#include "project/new_file.h"
#include "project/schema.h"

#include <algorithm>

namespace luft::project {
namespace {

constexpr int kAttempts = 5;

int version_of(Database& database) {
    return static_cast<int>(database.number("PRAGMA user_version"));
}

void step_up(Database& database, const std::vector<Migration>& steps, int from, int to) {
    for (int version = from; version < to; ++version) {
        const auto step = std::ranges::find(steps, version, &Migration::from);
        if (step == steps.end())
            throw Error(Fault::unreadable,
                        "The project is of format " + std::to_string(version) +
                            ", which this version of the program no longer reads.",
                        "Open it once with an older version of the program.");
        step->apply(database);
    }
    database.script("PRAGMA user_version = " + std::to_string(to));
}

/// What version 2 brought. Stays as it is, whatever becomes of the table later.
constexpr const char* kSungWords = R"sql(
CREATE TABLE sung_word (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    performance INTEGER NOT NULL REFERENCES performance (id),
    ordinal INTEGER NOT NULL CHECK (ordinal > 0),
    text TEXT NOT NULL CHECK (length(text) > 0),
    joins INTEGER NOT NULL CHECK (joins IN (0, 1)),
    at_s REAL NOT NULL CHECK (at_s >= 0),
    placed INTEGER NOT NULL CHECK (placed IN (0, 1))
) STRICT;
CREATE INDEX sung_word_in_order ON sung_word (performance, ordinal);
)sql";

/// What version 3 brought.
constexpr const char* kTwoPerformances = R"sql(
CREATE TABLE moment_beside (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    moment INTEGER NOT NULL UNIQUE REFERENCES moment (id),
    performance INTEGER NOT NULL REFERENCES performance (id),
    start_s REAL NOT NULL CHECK (start_s >= 0),
    end_s REAL NOT NULL,
    CHECK (end_s > start_s)
) STRICT;
CREATE TABLE script_quote (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    item INTEGER NOT NULL UNIQUE REFERENCES script_item (id),
    performance INTEGER NOT NULL REFERENCES performance (id),
    start_s REAL NOT NULL CHECK (start_s >= 0),
    end_s REAL NOT NULL,
    CHECK (end_s > start_s)
) STRICT;
CREATE TABLE pin (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    first INTEGER NOT NULL REFERENCES performance (id),
    second INTEGER NOT NULL REFERENCES performance (id),
    first_s REAL NOT NULL CHECK (first_s >= 0),
    second_s REAL NOT NULL CHECK (second_s >= 0),
    CHECK (first < second)
) STRICT;
CREATE INDEX pin_by_pair ON pin (first, second);
)sql";

} // namespace

const std::vector<Migration>& migrations() {
    static const std::vector<Migration> steps = {
        {1, [](Database& database) { database.script(kSungWords); }},
        {2, [](Database& database) { database.script(kTwoPerformances); }},
    };
    static_assert(kVersionWritten == 3 && kOldestVersionRead == 1, "each version in between needs its step");
    return steps;
}

std::filesystem::path backup_path(const std::filesystem::path& file, int to) {
    const std::string stem = file.stem().string() + ".before-v" + std::to_string(to);
    const auto taken = [](const std::filesystem::path& name) {
        return std::filesystem::exists(name) || std::filesystem::exists(name.string() + "-journal");
    };
    std::filesystem::path copy;
    for (int n = 1; n == 1 || taken(copy); ++n)
        copy =
            file.parent_path() / (stem + (n == 1 ? "" : "-" + std::to_string(n)) + file.extension().string());
    return copy;
}

void migrate(Database& database, const std::filesystem::path& file, Access access,
             const std::vector<Migration>& steps, int to) {
    const int from = version_of(database);
    if (from == to) return;
    if (from > to)
        throw Error(Fault::newer, "'" + file.string() + "' was written by a newer version of the program.",
                    "Install the newer version; the file has not been touched.");
    if (access == Access::read)
        throw Error(Fault::cannot_write,
                    "'" + file.string() + "' is of an older format and has to be brought up to date first.",
                    "Open it once for editing.");
    // Another program may be quicker, or edit while this one copies: then the copy isn't what is migrated.
    for (int attempt = 1;; ++attempt) {
        NewFile copy(backup_path(file, to));
        const std::int64_t seen = database.number("PRAGMA data_version");
        database.copy_to(copy.path());
        Transaction transaction(database, Transaction::Kind::writing);
        if (version_of(database) == to) return;
        if (database.number("PRAGMA data_version") != seen) {
            if (attempt < kAttempts) continue;
            throw Error(Fault::busy,
                        "Another program keeps editing the project, which is of an older format.",
                        "Close it there, and open it here again.");
        }
        step_up(database, steps, version_of(database), to);
        copy.permit_as(file);
        copy.keep_as(backup_path(file, to));
        database.expect_in_place();
        transaction.commit();
        return;
    }
}

} // namespace luft::project
