// Is the project file sound? SQLite's own checks first, then what only we know.
#include "base/fingerprint.h"
#include "base/text.h"
#include "project/carried_media.h"
#include "project/curve_columns.h"
#include "project/journal.h"
#include "project/mark_rows.h"
#include "project/row_rules.h"
#include "project/script_rows.h"
#include "project/store.h"
#include "project/store_vocabulary.h"

#include <set>

namespace luft::project {
namespace {

class Findings {
  public:
    void add(const std::string& what) {
        std::string readable = valid_utf8(what);
        if (seen_.insert(readable).second) damage_.push_back({std::move(readable)});
    }
    /// Runs one check; that it can't be run is damage as well.
    template <class Check>
    void look(const std::string& at, Check check) {
        try {
            check();
        } catch (const Error& e) {
            if (e.fault() == Fault::busy) throw;
            add(at + ": " + e.what());
        }
    }
    [[nodiscard]] std::vector<Damage> take() { return std::move(damage_); }

  private:
    std::vector<Damage> damage_;
    std::set<std::string> seen_;
};

void check_structure(Database& database, Findings& found) {
    Statement rows = database.prepare("PRAGMA integrity_check");
    while (rows.step())
        if (rows.text(0) != "ok") found.add("The file's structure: " + rows.text(0) + ".");
}

void check_references(Database& database, Findings& found) {
    Statement rows = database.prepare("PRAGMA foreign_key_check");
    while (rows.step())
        found.add("Row " + rows.text(1) + " of '" + rows.text(0) + "' refers to a row of '" + rows.text(2) +
                  "' that is missing.");
}

void check_ranges(Database& database, Findings& found) {
    for (const RowRule& rule : row_rules()) {
        Statement rows = database.prepare(std::string("SELECT rowid FROM ") + rule.table + " WHERE NOT (" +
                                          rule.holds + ")");
        while (rows.step())
            found.add("Row " + rows.text(0) + " of '" + rule.table + "' holds values that can't be.");
    }
}

void check_curve(const std::string& label, const std::string& name, std::span<const std::byte> bytes,
                 std::int64_t frames, Findings& found) {
    const std::string what = "The curve '" + name + "' of performance " + label;
    if (static_cast<std::int64_t>(bytes.size()) != frames * static_cast<std::int64_t>(sizeof(float))) {
        found.add(what + " has " + std::to_string(bytes.size()) + " bytes instead of four for each of " +
                  std::to_string(frames) + " frames.");
        return;
    }
    if (!can_be_curve(name, from_column(bytes))) found.add(what + " holds values that can't be.");
}

void check_curves(Database& database, Findings& found) {
    Statement rows =
        database.prepare("SELECT c.performance, c.name, c.samples, l.frames FROM curve c LEFT JOIN "
                         "listening l ON l.performance = c.performance");
    while (rows.step())
        check_curve(rows.text(0), rows.text(1), rows.blob(2), rows.is_null(3) ? -1 : rows.integer(3), found);
    voice::Curves all;
    for_each_curve(all, [&](std::string_view name, const auto&) {
        Statement without = database.query("SELECT performance FROM listening WHERE performance NOT IN "
                                           "(SELECT performance FROM curve WHERE name = ?)",
                                           name);
        while (without.step())
            found.add("Performance " + without.text(0) + " lacks its curve '" + std::string(name) + "'.");
    });
}

void check_carried(Database& database, Findings& found, const Progress& progress) {
    Statement rows = database.prepare("SELECT label, carried, media_size, media_sha256 FROM performance "
                                      "WHERE carried IS NOT NULL ORDER BY id");
    while (rows.step())
        found.look("The recording carried for '" + rows.text(0) + "'", [&] {
            const auto bytes = carried_bytes(database, rows.integer(1));
            if (bytes->size() != rows.integer(2) || fingerprint(*bytes, progress) != rows.text(3))
                found.add("The recording carried for '" + rows.text(0) + "' differs from its fingerprint.");
        });
}

void check_journal(Database& database, Findings& found) {
    if (!journal_is_whole(database))
        found.add("The history of edits doesn't hang together: undo may not lead back to what was.");
}

/// What a quote can't be of: its own performance, or a part of the script that doesn't halt.
void check_quotes(Database& database, Findings& found) {
    const auto look = [&](const char* sql, const std::string& what) {
        if (const std::int64_t n = database.number(sql); n > 0)
            found.add(what + " (" + counted(static_cast<std::size_t>(n), "row") + ").");
    };
    look("SELECT count(*) FROM moment_beside AS b JOIN moment AS m ON m.id = b.moment "
         "WHERE m.performance = b.performance",
         "A moment is compared with its own performance");
    look("SELECT count(*) FROM script_quote AS q JOIN script_item AS s ON s.id = q.item "
         "WHERE s.performance = q.performance OR s.kind <> 'stop'",
         "A part of a script quotes what it can't");
    look("SELECT count(*) FROM pin AS x JOIN pin AS y ON x.first = y.first AND x.second = y.second "
         "WHERE x.id < y.id AND (x.first_s - y.first_s) * (x.second_s - y.second_s) <= 0",
         "Pins between two performances cross");
}

/// Reads everything as the program would.
void check_contents(const Project& project, Database& database, Findings& found) {
    found.look("The piece", [&] { (void)project.piece(); });
    found.look("The vocabulary", [&] { (void)read_vocabulary(database); });
    std::vector<PerformanceId> ids;
    found.look("The performances", [&] {
        for (const Performance& p : project.performances())
            ids.push_back(p.id);
    });
    for (const PerformanceId id : ids) {
        const std::string of = " of performance " + std::to_string(id.value);
        found.look("The marks" + of, [&] {
            Statement rows = database.query("SELECT id FROM mark WHERE performance = ?", id.value);
            while (rows.step())
                found.look("The marks" + of, [&] { (void)read_mark_row(database, {rows.integer(0)}); });
        });
        found.look("The moments" + of, [&] { (void)project.moments(id, true); });
        found.look("The sung words" + of, [&] {
            if (!std::ranges::is_sorted(project.sung_words(id), {}, &SungWord::at))
                found.add("The sung words" + of + " are not in order of time.");
        });
        found.look("The script" + of, [&] { (void)read_script(database, id); });
        found.look("The summary" + of, [&] { (void)project.listening(id); });
    }
}

} // namespace

std::vector<Damage> Project::check(const Progress& progress) const {
    Findings found;
    Database& database = store_->database;
    constexpr double kReading = 0.3; // of the work; the rest is the carried recordings
    progress.step(0, "checking the file");
    found.look("The file's structure", [&] { check_structure(database, found); });
    found.look("The file's references", [&] { check_references(database, found); });
    found.look("The values", [&] { check_ranges(database, found); });
    found.look("The history of edits", [&] { check_journal(database, found); });
    found.look("The quotes and pins", [&] { check_quotes(database, found); });
    progress.step(kReading / 2, "checking the contents");
    check_contents(*this, database, found);
    found.look("The curves", [&] { check_curves(database, found); });
    check_carried(database, found, progress.part(kReading, 1));
    return found.take();
}

} // namespace luft::project
