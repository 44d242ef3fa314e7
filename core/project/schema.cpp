#include "project/schema.h"

#include "base/error.h"

#include <algorithm>
#include <map>
#include <set>

namespace luft::project {
namespace {

// Times are media times in seconds; 'span' checks that one starts at or after 0 and doesn't end before it
// starts. Without commas in the names: every rule here is found again by SQLite's own integrity check.
constexpr const char* kEdited = R"sql(
CREATE TABLE piece (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    title TEXT NOT NULL, writer TEXT NOT NULL, music_key TEXT NOT NULL, metre TEXT NOT NULL,
    words TEXT NOT NULL
) STRICT;
CREATE TABLE script_settings (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    words_per_minute REAL NOT NULL CHECK (words_per_minute > 0),
    least_between_stops_s REAL NOT NULL CHECK (least_between_stops_s >= 0),
    longest_quote_s REAL NOT NULL CHECK (longest_quote_s > 0),
    most_quoted_share REAL CHECK (most_quoted_share BETWEEN 0 AND 1),
    frame_rate_num INTEGER NOT NULL CHECK (frame_rate_num >= 0),
    frame_rate_den INTEGER NOT NULL CHECK (frame_rate_den > 0),
    drop_frame INTEGER NOT NULL CHECK (drop_frame IN (0, 1))
) STRICT;
CREATE TABLE facet (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    key TEXT NOT NULL UNIQUE, name TEXT NOT NULL, description TEXT NOT NULL,
    basis TEXT NOT NULL CHECK (basis IN ('measured', 'hint', 'coach')),
    own INTEGER NOT NULL CHECK (own IN (0, 1))
) STRICT;
CREATE TABLE shade (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    facet TEXT NOT NULL REFERENCES facet (key),
    key TEXT NOT NULL, name TEXT NOT NULL, description TEXT NOT NULL,
    leaning TEXT NOT NULL CHECK (leaning IN ('strength', 'watch', 'neutral')),
    UNIQUE (facet, key)
) STRICT;
CREATE TABLE drill (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    key TEXT NOT NULL UNIQUE, title TEXT NOT NULL, aim TEXT NOT NULL,
    steps TEXT NOT NULL,
    caution TEXT NOT NULL,
    trains TEXT NOT NULL,
    own INTEGER NOT NULL CHECK (own IN (0, 1))
) STRICT;
CREATE TABLE performance (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    label TEXT NOT NULL UNIQUE,
    performer TEXT NOT NULL, source TEXT NOT NULL, permission TEXT NOT NULL,
    media_path TEXT NOT NULL,
    media_size INTEGER NOT NULL CHECK (media_size > 0),
    media_sha256 TEXT NOT NULL CHECK (length(media_sha256) = 64),
    carried INTEGER REFERENCES carried (id),
    duration_s REAL NOT NULL CHECK (duration_s >= 0),
    sample_rate_hz INTEGER NOT NULL CHECK (sample_rate_hz >= 0),
    channels INTEGER NOT NULL CHECK (channels >= 0),
    has_video INTEGER NOT NULL CHECK (has_video IN (0, 1)),
    frame_rate_num INTEGER NOT NULL CHECK (frame_rate_num >= 0),
    frame_rate_den INTEGER NOT NULL CHECK (frame_rate_den > 0)
) STRICT;
CREATE TABLE mark (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    performance INTEGER NOT NULL REFERENCES performance (id),
    kind TEXT NOT NULL CHECK (kind IN ('note', 'breath', 'phrase', 'switch')),
    state TEXT NOT NULL CHECK (state IN ('proposed', 'kept', 'dropped')),
    origin TEXT NOT NULL CHECK (origin IN ('detected', 'coach')),
    start_s REAL NOT NULL CHECK (start_s >= 0),
    end_s REAL NOT NULL,
    confidence REAL NOT NULL CHECK (confidence BETWEEN 0 AND 1),
    evidence TEXT NOT NULL,
    detail TEXT NOT NULL,
    found_start_s REAL, found_end_s REAL,
    CHECK (end_s >= start_s)
) STRICT;
CREATE INDEX mark_by_time ON mark (performance, start_s);
CREATE TABLE moment (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    performance INTEGER NOT NULL REFERENCES performance (id),
    start_s REAL NOT NULL CHECK (start_s >= 0),
    end_s REAL NOT NULL,
    state TEXT NOT NULL CHECK (state IN ('proposed', 'kept', 'dropped')),
    origin TEXT NOT NULL CHECK (origin IN ('detected', 'coach')),
    verdict TEXT NOT NULL CHECK (verdict IN ('strength', 'watch', 'explain')),
    remark TEXT NOT NULL,
    evidence TEXT NOT NULL,
    confidence REAL NOT NULL CHECK (confidence BETWEEN 0 AND 1),
    drill TEXT REFERENCES drill (key),
    CHECK (end_s > start_s)
) STRICT;
CREATE INDEX moment_by_time ON moment (performance, start_s);
CREATE TABLE moment_shade (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    moment INTEGER NOT NULL REFERENCES moment (id),
    facet TEXT NOT NULL, shade TEXT NOT NULL,
    UNIQUE (moment, facet, shade),
    FOREIGN KEY (facet, shade) REFERENCES shade (facet, key)
) STRICT;
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
CREATE TABLE script_item (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    performance INTEGER NOT NULL REFERENCES performance (id),
    position INTEGER NOT NULL CHECK (position > 0),
    kind TEXT NOT NULL CHECK (kind IN ('opening', 'stop', 'aside', 'closing')),
    moment INTEGER REFERENCES moment (id),
    at_s REAL NOT NULL CHECK (at_s >= 0),
    replay_start_s REAL CHECK (replay_start_s >= 0),
    replay_end_s REAL,
    replay_speed REAL NOT NULL CHECK (replay_speed BETWEEN 0.25 AND 1),
    resume_s REAL CHECK (resume_s >= 0),
    text TEXT NOT NULL,
    own_words INTEGER NOT NULL CHECK (own_words IN (0, 1)),
    rehearsed_s REAL CHECK (rehearsed_s >= 0),
    CHECK ((replay_start_s IS NULL) = (replay_end_s IS NULL)),
    CHECK (replay_end_s > replay_start_s)
) STRICT;
CREATE INDEX script_item_by_place ON script_item (performance, position);
CREATE INDEX script_item_by_moment ON script_item (moment);
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

// 'listening' and 'curve' name their performance without a foreign key: taking back the adding of a
// performance must not lose them.
constexpr const char* kDerived = R"sql(
CREATE TABLE listening (
    performance INTEGER PRIMARY KEY,
    setting TEXT NOT NULL CHECK (setting IN ('alone', 'accompanied')),
    tuning_hz REAL NOT NULL CHECK (tuning_hz > 0),
    integrated_lufs REAL, range_lu REAL, true_peak_dbtp REAL,
    one_register INTEGER NOT NULL CHECK (one_register IN (0, 1)),
    duration_s REAL NOT NULL CHECK (duration_s >= 0),
    frames INTEGER NOT NULL CHECK (frames >= 0)
) STRICT;
CREATE TABLE curve (
    id INTEGER PRIMARY KEY,
    performance INTEGER NOT NULL, name TEXT NOT NULL,
    samples BLOB NOT NULL,
    UNIQUE (performance, name)
) STRICT;
CREATE TABLE carried (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL, size INTEGER NOT NULL CHECK (size > 0), chunk_size INTEGER NOT NULL CHECK (chunk_size > 0)
) STRICT;
CREATE TABLE carried_chunk (
    id INTEGER PRIMARY KEY,
    carried INTEGER NOT NULL REFERENCES carried (id), position INTEGER NOT NULL CHECK (position >= 0),
    bytes BLOB NOT NULL,
    UNIQUE (carried, position)
) STRICT;
)sql";

constexpr const char* kJournal = R"sql(
CREATE TABLE journal_entry (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    label TEXT NOT NULL, made_at TEXT NOT NULL,
    undone INTEGER NOT NULL CHECK (undone IN (0, 1))
) STRICT;
CREATE TABLE journal_step (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    entry INTEGER NOT NULL REFERENCES journal_entry (id),
    table_name TEXT NOT NULL, row_id INTEGER NOT NULL,
    change TEXT NOT NULL CHECK (change IN ('added', 'changed', 'removed'))
) STRICT;
CREATE INDEX journal_step_by_entry ON journal_step (entry);
CREATE TABLE journal_value (
    step INTEGER NOT NULL REFERENCES journal_step (id),
    column_name TEXT NOT NULL,
    before ANY, after ANY,
    PRIMARY KEY (step, column_name)
) STRICT, WITHOUT ROWID;
)sql";

using Columns = std::map<std::string, std::vector<std::string>>;

std::vector<std::string> tables_of(Database& database) {
    std::vector<std::string> names;
    Statement rows = database.prepare("SELECT name FROM main.sqlite_schema WHERE type = 'table' "
                                      "AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name");
    while (rows.step())
        names.push_back(rows.text(0));
    return names;
}

Columns layout_of(Database& database) {
    Columns layout;
    for (const std::string& table : tables_of(database))
        layout[table] = columns_of(database, table);
    return layout;
}

} // namespace

const std::vector<std::string>& derived_tables() {
    static const std::vector<std::string> names = {"listening", "curve", "carried", "carried_chunk"};
    return names;
}

const std::vector<std::string>& journal_tables() {
    static const std::vector<std::string> names = {"journal_entry", "journal_step", "journal_value"};
    return names;
}

std::vector<std::string> edited_tables(Database& database) {
    std::vector<std::string> names = tables_of(database);
    std::erase_if(names, [](const std::string& name) {
        return std::ranges::count(derived_tables(), name) + std::ranges::count(journal_tables(), name) > 0;
    });
    return names;
}

std::vector<std::string> columns_of(Database& database, std::string_view table) {
    std::vector<std::string> names;
    Statement rows = database.query("SELECT name FROM pragma_table_info(?) ORDER BY cid", table);
    while (rows.step())
        names.push_back(rows.text(0));
    return names;
}

void create_schema(Database& database) {
    for (const char* part : {kDerived, kEdited, kJournal})
        database.script(part);
    database.script("PRAGMA application_id = " + std::to_string(kApplicationId));
    database.script("PRAGMA user_version = " + std::to_string(kVersionWritten));
}

void verify_schema(Database& database) {
    Database expected(":memory:", Database::Mode::edit);
    create_schema(expected);
    const Columns have = layout_of(database);
    for (const auto& [table, columns] : layout_of(expected)) {
        const auto found = have.find(table);
        if (found == have.end() || found->second != columns)
            throw Error(Fault::unreadable, "The project file lacks its table '" + table + "'.",
                        "Open a copy of the project from before it was damaged.");
    }
    if (database.number("SELECT count(*) FROM main.sqlite_schema WHERE type IN ('trigger', 'view')") > 0)
        throw Error(Fault::unreadable, "The project file brings database programs of its own.",
                    "Don't use it, unless you put them there; then remove them with the tool you used.");
}

} // namespace luft::project
