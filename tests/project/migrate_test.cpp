// Bringing an older file up to date, with steps made up for the test.
#include "compare.h"
#include "project/journal.h"
#include "project/migrate.h"
#include "project/schema.h"

using namespace desk;

namespace {

std::vector<Migration> steps() {
    return {
        {kVersionWritten,
         [](Database& db) { db.script("ALTER TABLE moment ADD COLUMN colour TEXT NOT NULL DEFAULT 'red'"); }},
        {kVersionWritten + 1, [](Database& db) { db.script("UPDATE moment SET colour = 'blue'"); }}};
}

constexpr int kTo = kVersionWritten + 2;

} // namespace

TEST_CASE("an older project is copied beside itself, and brought up to date step by step") {
    Sample s;
    Moment m;
    m.performance = s.a;
    m.span = span(0, 1);
    s.project.add_moment(m);
    const std::string before = contents(s.file);
    {
        Database db(s.file, Database::Mode::edit);
        migrate(db, s.file, Access::edit, steps(), kTo);
        CHECK(db.number("PRAGMA user_version") == kTo);
        CHECK(db.number("SELECT count(*) FROM moment WHERE colour = 'blue'") == 1);
        migrate(db, s.file, Access::edit, steps(), kTo); // again: nothing to do
    }
    const fs::path copy = s.folder / ("song.before-v" + std::to_string(kTo) + ".luft");
    REQUIRE(fs::exists(copy));
    CHECK((contents(copy) == before));
    CHECK(Project::open(copy).moments(s.a).size() == 1);
    CHECK(fault_of([&] { Project::open(s.file); }) == Fault::newer);
    CHECK(backup_path(s.file, kTo) == s.folder / ("song.before-v" + std::to_string(kTo) + "-2.luft"));
}

TEST_CASE("a migration that fails leaves the file as it was") {
    Sample s;
    auto broken = steps();
    broken[1].apply = [](Database& db) { db.script("UPDATE nothing SET x = 1"); };
    const std::string before = contents(s.file);
    Database db(s.file, Database::Mode::edit);
    CHECK(fault_of([&] { migrate(db, s.file, Access::edit, broken, kTo); }) == Fault::internal);
    CHECK((contents(s.file) == before));
    CHECK(db.number("PRAGMA user_version") == kVersionWritten);
    CHECK(db.number("SELECT count(*) FROM pragma_table_info('moment') WHERE name = 'colour'") == 0);
}

TEST_CASE("a project that is too old, or may only be read, isn't migrated") {
    Sample s;
    Database db(s.file, Database::Mode::edit);
    CHECK(fault_of([&] { migrate(db, s.file, Access::edit, {steps()[1]}, kTo); }) == Fault::unreadable);
    CHECK(fault_of([&] { migrate(db, s.file, Access::read, steps(), kTo); }) == Fault::cannot_write);
    CHECK(db.number("PRAGMA user_version") == kVersionWritten);
}

TEST_CASE("a change outside the journal is refused by every table that the coach edits") {
    Sample s;
    s.project.store_listening(s.a, analysis());
    Moment m;
    m.performance = s.a;
    m.span = span(0, 1);
    m.shades = {{"onset", "glottal"}};
    s.project.add_moment(m);
    ScriptItem item;
    item.performance = s.a;
    s.project.add_script_item(item);
    s.project.set_sung_words(s.a, {{{}, s.a, "wa", true, Seconds(0.1)}});
    const PerformanceId b = s.add("b.wav", "B");
    m.beside = Quote{b, span(1, 2)};
    s.project.add_moment(m);
    item.quote = m.beside;
    s.project.add_script_item(item);
    s.project.set_pins(s.a, b, {{Seconds(1), Seconds(1.5)}});
    Database db(s.file, Database::Mode::edit);
    install_journal(db);
    const auto tables = edited_tables(db);
    CHECK(tables.size() == 14);
    for (const std::string& table : tables) {
        INFO(table);
        CHECK(db.number("SELECT count(*) FROM temp.sqlite_schema WHERE type = 'trigger' AND tbl_name = ?",
                        table) == 3); // on adding, changing and removing
        CHECK_THROWS_WITH(db.run("DELETE FROM " + table), Catch::Contains("outside the journal"));
        CHECK_THROWS_WITH(db.run("UPDATE " + table + " SET id = id + 1000"),
                          Catch::Contains("outside the journal") || Catch::Contains("CHECK"));
    }
}
