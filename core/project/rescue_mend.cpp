#include "project/rescue_mend.h"

#include "base/fingerprint.h"
#include "base/text.h"
#include "project/carried_media.h"
#include "project/curve_columns.h"
#include "project/mark_rows.h"
#include "project/row_rules.h"
#include "project/store_vocabulary.h"

#include <set>

namespace luft::project {
namespace {

using Sentences = std::vector<std::string>;

/// What refers to a row that isn't there. `sql` takes it out, or takes the reference away.
struct Mending {
    const char* sql;
    const char* one;
    const char* many; ///< of several: "N moments …"
};

constexpr Mending kMendings[] = {
    {"DELETE FROM shade WHERE facet NOT IN (SELECT key FROM facet)", "shade was left out: its facet is lost.",
     "shades were left out: their facets are lost."},
    {"UPDATE moment SET drill = NULL WHERE drill NOT IN (SELECT key FROM drill)",
     "moment stands without its drill, which is lost.",
     "moments stand without their drills, which are lost."},
    {"DELETE FROM moment_shade WHERE moment NOT IN (SELECT id FROM moment) OR "
     "(facet, shade) NOT IN (SELECT facet, key FROM shade)",
     "shade of a moment was left out: the moment or the shade is lost.",
     "shades of moments were left out: the moments or the shades are lost."},
    {"UPDATE script_item SET moment = NULL WHERE moment NOT IN (SELECT id FROM moment)",
     "part of a script stands without its moment, which is lost.",
     "parts of scripts stand without their moments, which are lost."},
    {"DELETE FROM moment_beside WHERE moment NOT IN (SELECT id FROM moment) OR "
     "performance NOT IN (SELECT id FROM performance) OR "
     "performance = (SELECT performance FROM moment WHERE id = moment_beside.moment)",
     "moment stands without the counterpart it compared with.",
     "moments stand without the counterparts they compared with."},
    {"DELETE FROM script_quote WHERE item NOT IN (SELECT id FROM script_item WHERE kind = 'stop') OR "
     "performance NOT IN (SELECT id FROM performance) OR "
     "performance = (SELECT performance FROM script_item WHERE id = script_quote.item)",
     "quote of another performance was left out.", "quotes of another performance were left out."},
    {"DELETE FROM pin WHERE first NOT IN (SELECT id FROM performance) OR "
     "second NOT IN (SELECT id FROM performance) OR EXISTS (SELECT 1 FROM pin AS x WHERE x.id < pin.id AND "
     "x.first = pin.first AND x.second = pin.second AND "
     "(x.first_s - pin.first_s) * (x.second_s - pin.second_s) <= 0)",
     "pin between two performances was left out.", "pins between two performances were left out."},
    {"DELETE FROM carried_chunk WHERE carried NOT IN (SELECT id FROM carried)",
     "piece of a carried recording was left out: nothing tells which one it is of.",
     "pieces of carried recordings were left out: nothing tells which ones they are of."},
};

void take_out_what_hangs(Database& database, Sentences& said) {
    for (const Mending& mending : kMendings) {
        database.run(mending.sql);
        if (const int n = database.changes(); n > 0)
            said.push_back(std::to_string(n) + " " + (n == 1 ? mending.one : mending.many));
    }
}

/// The tables' own rules have been kept; these are wider.
void take_out_what_cannot_be(Database& database, Sentences& said) {
    int n = 0;
    for (const RowRule& rule : row_rules()) {
        database.run(std::string("DELETE FROM ") + rule.table + " WHERE NOT (" + rule.holds + ")");
        n += database.changes();
    }
    if (n > 0)
        said.push_back(std::to_string(n) + (n == 1 ? " row" : " rows") + " held values that can't be.");
}

void tell_of_piece(Database& database, Sentences& said) {
    if (database.number("SELECT count(*) FROM script_settings") == 0)
        said.emplace_back("The settings of the script are lost; the usual ones hold.");
    if (database.number("SELECT count(*) FROM piece") > 0) return;
    database.run("INSERT INTO piece VALUES (1, 'Rescued project', '', '', '', '')");
    said.emplace_back("Title and words of the piece are lost.");
}

/// One drill whose steps or aims are no list of texts makes the whole book unreadable.
bool take_out_unreadable_drills(Database& database) {
    const auto bad = [](const std::string& list) {
        return "CASE WHEN json_valid(" + list + ") THEN json_type(" + list +
               ") <> 'array' OR EXISTS (SELECT 1 FROM json_each(" + list +
               ") WHERE type <> 'text') ELSE 1 END";
    };
    database.run("DELETE FROM drill WHERE " + bad("steps") + " OR " + bad("trains"));
    return database.changes() > 0;
}

/// Facets, shades and drills that every project begins with and this one hasn't any more.
void bring_back_vocabulary(Database& database, Sentences& said) {
    const auto count = [&] {
        return database.number("SELECT (SELECT count(*) FROM facet) + (SELECT count(*) FROM shade) + "
                               "(SELECT count(*) FROM drill)");
    };
    const std::int64_t before = count();
    add_missing_vocabulary(database, vocabulary::default_vocabulary());
    if (const std::int64_t n = count() - before; n > 0)
        said.push_back(counted(static_cast<std::size_t>(n), "entry", "entries") +
                       " of the vocabulary and the drill book came back as the program brings them.");
}

void stand_in_for_performances(Database& database, Sentences& said) {
    std::set<std::int64_t> lost;
    for (const char* table : {"mark", "moment", "script_item", "sung_word"}) {
        Statement rows = database.prepare(std::string("SELECT DISTINCT performance FROM ") + table +
                                          " WHERE performance NOT IN (SELECT id FROM performance)");
        while (rows.step())
            lost.insert(rows.integer(0));
    }
    for (const std::int64_t id : lost) {
        const std::string label = "lost-" + std::to_string(id);
        database.run("INSERT INTO performance VALUES (?, ?, '', '', '', 'lost', 1, ?, NULL, "
                     "coalesce((SELECT duration_s FROM listening WHERE performance = ?), 0), 0, 0, 0, 0, 1)",
                     id, label, std::string(64, '0'), id);
        said.push_back("What is known of a performance is lost: '" + label +
                       "' stands in for it, without its recording.");
    }
}

void take_out_unreadable_marks(Database& database, Sentences& said) {
    std::vector<std::int64_t> unreadable;
    Statement rows = database.prepare("SELECT id FROM mark");
    while (rows.step()) {
        try {
            (void)read_mark_row(database, {rows.integer(0)});
        } catch (const Error& e) {
            if (e.fault() != Fault::unreadable) throw;
            unreadable.push_back(rows.integer(0));
        }
    }
    for (const std::int64_t id : unreadable)
        database.run("DELETE FROM mark WHERE id = ?", id);
    if (!unreadable.empty()) said.push_back(counted(unreadable.size(), "mark") + " couldn't be read.");
}

/// Carried bytes are known by their fingerprint; what isn't whole goes.
void take_out_broken_recordings(Database& database, Sentences& said, const Progress& progress) {
    struct Carried {
        std::int64_t performance, carried, size;
        std::string label, fingerprint;
    };
    std::vector<Carried> all;
    Statement rows = database.prepare("SELECT id, carried, media_size, label, media_sha256 FROM performance "
                                      "WHERE carried IS NOT NULL");
    while (rows.step())
        all.push_back({rows.integer(0), rows.integer(1), rows.integer(2), rows.text(3), rows.text(4)});
    for (const Carried& one : all) {
        try {
            const auto bytes = carried_bytes(database, one.carried);
            if (bytes->size() == one.size && fingerprint(*bytes, progress) == one.fingerprint) continue;
        } catch (const Error& e) {
            if (e.fault() != Fault::unreadable) throw;
        }
        database.run("UPDATE performance SET carried = NULL WHERE id = ?", one.performance);
        said.push_back("The recording carried for '" + one.label +
                       "' isn't whole; link it to the file that it was carried from.");
    }
    for (const char* sql :
         {"DELETE FROM carried WHERE id NOT IN (SELECT carried FROM performance WHERE carried IS NOT NULL)",
          "DELETE FROM carried_chunk WHERE carried NOT IN (SELECT id FROM carried)"})
        database.run(sql);
}

void take_out_broken_curves(Database& database, Sentences& said) {
    std::set<std::string> names;
    voice::Curves all;
    for_each_curve(all, [&](std::string_view name, const auto&) { names.insert(std::string(name)); });
    std::set<std::int64_t> broken;
    Statement rows = database.prepare("SELECT DISTINCT performance FROM curve UNION "
                                      "SELECT performance FROM listening");
    while (rows.step()) {
        std::set<std::string> there;
        Statement whole = database.query("SELECT name, samples FROM curve JOIN listening USING (performance) "
                                         "WHERE performance = ? AND length(samples) = 4 * frames",
                                         rows.integer(0));
        while (whole.step())
            if (can_be_curve(whole.text(0), from_column(whole.blob(1)))) there.insert(whole.text(0));
        if (there != names) broken.insert(rows.integer(0));
    }
    for (const std::int64_t id : broken) {
        Statement label = database.query("SELECT label FROM performance WHERE id = ?", id);
        if (label.step())
            said.push_back("The curves of '" + label.text(0) +
                           "' aren't whole; let the program listen to it again.");
        database.run("DELETE FROM curve WHERE performance = ?", id);
        database.run("DELETE FROM listening WHERE performance = ?", id);
    }
}

/// Words and parts of the script count from 1 without gaps, words in order of time.
void count_anew(Database& database, Sentences& said) {
    database.run("UPDATE sung_word SET ordinal = n.place FROM (SELECT id, row_number() OVER (PARTITION BY "
                 "performance ORDER BY at_s, ordinal, id) AS place FROM sung_word) AS n "
                 "WHERE n.id = sung_word.id AND n.place <> sung_word.ordinal");
    if (database.changes() > 0) said.emplace_back("The sung words were put in order again.");
    database.run("UPDATE script_item SET position = n.place FROM (SELECT id, row_number() OVER (PARTITION BY "
                 "performance ORDER BY position, id) AS place FROM script_item) AS n "
                 "WHERE n.id = script_item.id AND n.place <> script_item.position");
    if (database.changes() > 0) said.emplace_back("The parts of the script were put in order again.");
}

} // namespace

std::vector<std::string> mend_rescued(Database& database, const std::set<std::string>& lossy,
                                      const Progress& progress) {
    Sentences said;
    take_out_what_cannot_be(database, said);
    tell_of_piece(database, said);
    const bool drills_went = take_out_unreadable_drills(database);
    // A vocabulary that is whole may be an older program's, and stays as it is.
    if (drills_went || lossy.contains("facet") || lossy.contains("shade") || lossy.contains("drill"))
        bring_back_vocabulary(database, said);
    stand_in_for_performances(database, said);
    take_out_unreadable_marks(database, said);
    take_out_what_hangs(database, said);
    take_out_broken_recordings(database, said, progress);
    take_out_broken_curves(database, said);
    count_anew(database, said);
    return said;
}

} // namespace luft::project
