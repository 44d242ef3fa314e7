// Every kind of edit, taken back and made again: the file's contents must be the same bit for bit.
#include "compare.h"

#include <functional>

using namespace desk;

namespace {

struct Ids {
    PerformanceId a, b;
    MomentId moment, proposed;
    ScriptItemId stop;
    MarkId breath, note, phrase1, phrase2;
};

Ids furnish(Sample& s) {
    Project& p = s.project;
    p.store_listening(s.a, analysis());
    Ids ids{s.a, s.add("other.wav", "other"), {}, {}, {}, {}, {}, {}, {}};
    for (const Mark& m : p.marks(s.a)) {
        if (m.kind() == MarkKind::breath) ids.breath = m.id;
        if (m.kind() == MarkKind::note) ids.note = m.id;
        if (m.kind() == MarkKind::phrase) (ids.phrase1.value == 0 ? ids.phrase1 : ids.phrase2) = m.id;
    }
    Moment m;
    m.performance = s.a;
    m.span = span(0.5, 1.5);
    m.shades = {{"onset", "breathy"}, {"breath", "full"}};
    m.drill = "silent-breath";
    m.beside = Quote{ids.b, span(0.1, 1.0 / 3)};
    ids.moment = p.add_moment(m);
    m.span = span(2.0, 2.5);
    m.beside.reset();
    p.propose_moments(s.a, {m});
    ids.proposed = p.moments(s.a).back().id;
    ScriptItem item;
    item.performance = s.a;
    item.moment = ids.moment;
    item.at = Seconds(1.5);
    item.replay = span(0.5, 1.5);
    item.text = "Listen to the breath.";
    item.quote = Quote{ids.b, span(0.1, 1.0 / 3)};
    ids.stop = p.add_script_item(item);
    p.set_sung_words(s.a, {{{}, s.a, "wa", true, Seconds(0.1)}, {{}, s.a, "ter", false, Seconds(1.6)}});
    return ids;
}

struct Kind {
    std::string name;
    std::string table; ///< that it edits
    std::function<void(Sample&, const Ids&)> run;
};

const std::vector<Kind>& kinds() {
    static const std::vector<Kind> all = {
        {"set_piece", "piece",
         [](Sample& s, const Ids&) {
             s.project.set_piece({"Other", "", "", "", ""});
         }},
        {"set_script_settings", "script_settings",
         [](Sample& s, const Ids&) {
             ScriptSettings settings;
             settings.words_per_minute = 133.3;
             settings.most_quoted_share = 0.1;
             s.project.set_script_settings(settings);
         }},
        {"add_facet", "facet",
         [](Sample& s, const Ids&) {
             s.project.add_facet(
                 {"stage",
                  "Stage",
                  "What is seen.",
                  vocabulary::Basis::coach,
                  {{"calm", "calm", "The singer stands still.", vocabulary::Leaning::neutral}}});
         }},
        {"add_shade", "shade",
         [](Sample& s, const Ids&) {
             s.project.add_shade("onset", {"whispered", "whispered", "x", vocabulary::Leaning::neutral});
         }},
        {"put_drill (new)", "drill",
         [](Sample& s, const Ids&) {
             s.project.put_drill({"my-own", "Mine", "a", {"b"}, "", {{"onset", ""}}});
         }},
        {"put_drill (known)", "drill",
         [](Sample& s, const Ids&) {
             s.project.put_drill({"straw", "Mine", "a", {"b"}, "", {{"onset", ""}}});
         }},
        {"add_performance", "performance", [](Sample& s, const Ids&) { s.add("b.wav", "B"); }},
        {"add_performance (carried)", "performance",
         [](Sample& s, const Ids&) { s.add("b.wav", "B", true); }},
        {"set_performance_notes", "performance",
         [](Sample& s, const Ids& i) { s.project.set_performance_notes(i.a, "x", "y", "z"); }},
        {"remove_performance", "performance",
         [](Sample& s, const Ids& i) { s.project.remove_performance(i.a); }},
        {"remove_performance (quoted)", "performance",
         [](Sample& s, const Ids& i) { s.project.remove_performance(i.b); }},
        {"set_pins", "pin",
         [](Sample& s, const Ids& i) {
             s.project.set_pins(i.b, i.a, {{Seconds(1.0 / 3), Seconds(0.1 + 0.2)}});
         }},
        {"change_moment (beside)", "moment_beside",
         [](Sample& s, const Ids& i) {
             Moment m = s.project.moment(i.moment);
             m.beside->span = span(1.0 / 7, 2);
             s.project.change_moment(m);
         }},
        {"change_script_item (quote)", "script_quote",
         [](Sample& s, const Ids& i) {
             ScriptItem item = s.project.script(i.a).front();
             item.quote.reset();
             s.project.change_script_item(item);
         }},
        {"relink", "performance",
         [](Sample& s, const Ids& i) {
             fs::copy_file(s.folder / "a.wav", s.folder / "copy.wav");
             s.project.relink(i.a, s.folder / "copy.wav");
         }},
        {"store_listening", "mark",
         [](Sample& s, const Ids& i) {
             marks::Analysis again = analysis();
             again.notes[0].pitch = MidiPitch(61.0000000001);
             again.breaths.clear();
             again.phrases.push_back(phrase(2.9, 3.0));
             s.project.store_listening(i.a, again);
         }},
        {"add_mark", "mark",
         [](Sample& s, const Ids& i) {
             s.project.add_mark({{}, i.a, MarkState::kept, Origin::coach, breath(2.9, 3.0)});
         }},
        {"set_mark_state", "mark",
         [](Sample& s, const Ids& i) { s.project.set_mark_state(i.breath, MarkState::dropped); }},
        {"move_mark", "mark",
         [](Sample& s, const Ids& i) { s.project.move_mark(i.breath, span(0.1 + 0.2, 1.45)); }},
        {"change_mark", "mark",
         [](Sample& s, const Ids& i) {
             Mark m = s.project.mark(i.note);
             std::get<marks::Note>(m.what).vibrato = marks::Vibrato{Hertz(5.5), Cents(70), 0.9};
             s.project.change_mark(m);
         }},
        {"split_phrase", "mark",
         [](Sample& s, const Ids& i) { s.project.split_phrase(i.phrase2, Seconds(2)); }},
        {"join_phrases", "mark",
         [](Sample& s, const Ids& i) { s.project.join_phrases(i.phrase1, i.phrase2); }},
        {"add_moment", "moment_shade",
         [](Sample& s, const Ids& i) {
             Moment m = s.project.moment(i.moment);
             m.span = span(0, 1.0 / 3);
             s.project.add_moment(m);
         }},
        {"change_moment", "moment",
         [](Sample& s, const Ids& i) {
             Moment m = s.project.moment(i.moment);
             m.remark = "Here.";
             m.drill = "";
             m.shades = {{"breath", "full"}, {"larynx", "low"}};
             s.project.change_moment(m);
         }},
        {"set_moment_state", "moment",
         [](Sample& s, const Ids& i) { s.project.set_moment_state(i.proposed, MarkState::dropped); }},
        {"propose_moments", "moment", [](Sample& s, const Ids& i) { s.project.propose_moments(i.a, {}); }},
        {"set_sung_words", "sung_word",
         [](Sample& s, const Ids& i) {
             s.project.set_sung_words(i.a, {{{}, i.a, "one", false, Seconds(1.0 / 3)}});
         }},
        {"move_sung_word", "sung_word",
         [](Sample& s, const Ids& i) {
             s.project.move_sung_word(s.project.sung_words(i.a).front().id, Seconds(0.1 + 0.2));
         }},
        {"store_script", "script_item", [](Sample& s, const Ids& i) { s.project.store_script(i.a, {}); }},
        {"add_script_item", "script_item",
         [](Sample& s, const Ids& i) {
             ScriptItem item;
             item.performance = i.a;
             item.kind = ScriptItemKind::opening;
             s.project.add_script_item(item);
         }},
        {"change_script_item", "script_item",
         [](Sample& s, const Ids& i) {
             ScriptItem item = s.project.script(i.a).front();
             item.text = "Other words.";
             item.own_words = true;
             item.rehearsed = Seconds(3.21);
             s.project.change_script_item(item);
         }},
        {"change_script", "script_item",
         [](Sample& s, const Ids& i) {
             ScriptItem item = s.project.script(i.a).front();
             item.at = Seconds(1.0 / 7);
             ScriptItem added = item;
             added.id = {};
             s.project.change_script(i.a, {item, added}, "change several");
         }},
        {"remove_script_item", "script_item",
         [](Sample& s, const Ids& i) { s.project.remove_script_item(i.stop); }},
    };
    return all;
}

} // namespace

TEST_CASE("every kind of edit can be taken back and made again, to the bit, also after closing") {
    Sample s;
    const Ids ids = furnish(s);
    for (const Kind& kind : kinds()) {
        INFO(kind.name);
        const std::string before = contents(s.file, false);
        kind.run(s, ids);
        const std::string after = contents(s.file, false);
        CHECK((before != after)); // in brackets, so that a failure doesn't print whole projects
        const JournalEntry entry = s.project.journal(1).front();
        CHECK_FALSE(entry.undone);
        CHECK_FALSE(entry.label.empty());

        CHECK(s.project.undo() == entry.label);
        CHECK((contents(s.file, false) == before));
        CHECK(s.project.journal(1).front().undone);
        s.reopen();
        CHECK(s.project.redo() == entry.label);
        CHECK((contents(s.file, false) == after));
        CHECK_FALSE(s.project.redo());
        s.reopen();
        CHECK(s.project.undo() == entry.label);
        CHECK((contents(s.file, false) == before));
        CHECK(s.project.check().empty());
    }
}

TEST_CASE("the edits above reach every table that the coach edits") {
    Sample s;
    sqlite3* db = nullptr;
    REQUIRE(sqlite3_open(s.file.c_str(), &db) == SQLITE_OK);
    sqlite3_stmt* rows = nullptr;
    // Only what is derived or the journal itself is excepted; a new table is in this list by itself.
    REQUIRE(sqlite3_prepare_v2(
                db,
                "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND "
                "name NOT LIKE 'journal%' AND name NOT IN ('curve', 'listening', 'carried', "
                "'carried_chunk')",
                -1, &rows, nullptr) == SQLITE_OK);
    int tables = 0;
    while (sqlite3_step(rows) == SQLITE_ROW) {
        const std::string table = reinterpret_cast<const char*>(sqlite3_column_text(rows, 0));
        INFO(table);
        CHECK(std::ranges::count(kinds(), table, &Kind::table) > 0);
        ++tables;
    }
    CHECK(tables == 14);
    sqlite3_finalize(rows);
    sqlite3_close(db);
}

TEST_CASE("all edits of a session are taken back one by one to the empty project, and all made again") {
    Sample s;
    const Ids ids = furnish(s);
    for (const Kind& kind : kinds())
        // Not what takes away or renews what another one needs.
        if (!kind.name.starts_with("remove") && !kind.name.ends_with("(carried)") &&
            kind.name != "store_listening" && kind.name != "propose_moments" && kind.name != "store_script")
            kind.run(s, ids);
    const std::string end = contents(s.file);
    int undone = 0;
    while (s.project.undo())
        ++undone;
    CHECK(undone >= 22);
    CHECK(s.project.performances().empty());
    s.reopen();
    int redone = 0;
    while (s.project.redo())
        ++redone;
    CHECK(redone == undone);
    CHECK((contents(s.file) == end));
}

TEST_CASE("a new edit discards what was undone; one that changes nothing doesn't") {
    Sample s;
    s.project.set_piece({"Second", "", "", "", ""});
    s.project.undo();
    s.project.set_piece(s.project.piece()); // says the same
    CHECK(s.project.journal().front().undone);
    CHECK(s.project.redo());
    s.project.undo();
    s.project.set_piece({"Third", "", "", "", ""});
    CHECK_FALSE(s.project.redo());
    CHECK(s.project.piece().title == "Third");
    CHECK(s.project.journal().front().label == "change the notes on the piece");
    CHECK(s.project.journal().size() == 2); // with the adding of the performance
}

TEST_CASE("undoing and redoing the adding of a performance keeps its curves and carried bytes") {
    Sample s;
    const PerformanceId b = s.add("b.wav", "B", true);
    s.project.store_listening(b, analysis());
    s.project.undo();
    s.project.undo();
    CHECK(s.project.performances().size() == 1);
    CHECK(fault_of([&] { (void)s.project.curves(b); }) == Fault::not_found);
    s.reopen();
    s.project.redo();
    CHECK(s.project.performance("B").id == b);
    CHECK(s.project.curves(b).frames() == 300);
    CHECK(s.project.listening(b).has_value());
    CHECK(s.project.media(s.project.performance("B"), true)->size() == 5000);
    s.project.redo();
    CHECK(s.project.marks(b).size() == 6);
}

TEST_CASE("carried bytes and curves go when the adding of their performance can't be redone any more") {
    Sample s;
    s.project.store_listening(s.add("b.wav", "B", true), analysis());
    s.project.undo();
    s.project.undo();
    REQUIRE(contents(s.file).find("carried_chunk|") != std::string::npos);
    s.project.set_piece({"Second", "", "", "", ""});
    CHECK(contents(s.file).find("carried_chunk|") == std::string::npos);
    CHECK(contents(s.file).find("curve|") == std::string::npos);
    CHECK(s.project.check().empty());
}

TEST_CASE("the journal names each edit in words, newest first, with its time in UTC") {
    Sample s;
    s.project.store_listening(s.a, analysis());
    const auto marks = s.project.marks(s.a);
    const auto found = std::ranges::find(marks, MarkKind::breath, &Mark::kind);
    s.project.set_mark_state(found->id, MarkState::dropped);
    const auto journal = s.project.journal();
    REQUIRE(journal.size() == 3);
    CHECK(journal[0].label == "drop breath at 0:01.0");
    CHECK(journal[1].label == "listen to 'A'");
    CHECK(journal[2].label == "add the performance 'A'");
    CHECK(journal[0].when.size() == std::string("2026-01-02T03:04:05Z").size());
    CHECK(journal[0].when.back() == 'Z');
    CHECK(s.project.journal(1).size() == 1);
    CHECK(s.project.journal(0).empty());
}
