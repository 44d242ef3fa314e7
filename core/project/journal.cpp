#include "project/journal.h"

#include "base/error.h"
#include "project/schema.h"

#include <algorithm>

namespace luft::project {
namespace {

constexpr const char* kNow = "strftime('%Y-%m-%dT%H:%M:%SZ', 'now')";

void record_as(Database& database, std::optional<std::int64_t> entry) {
    database.run("UPDATE temp.journal_now SET entry = ?", entry);
}

/// Recordings, curves and summaries that neither a row nor an edit refers to any more.
void drop_orphans(Database& database) {
    database.run(
        "DELETE FROM listening WHERE performance NOT IN (SELECT id FROM performance) AND performance "
        "NOT IN (SELECT row_id FROM journal_step WHERE table_name = 'performance')");
    database.run("DELETE FROM curve WHERE performance NOT IN (SELECT id FROM performance) AND performance "
                 "NOT IN (SELECT row_id FROM journal_step WHERE table_name = 'performance')");
    constexpr const char* kUnused =
        "NOT IN (SELECT carried FROM performance WHERE carried IS NOT NULL UNION "
        "SELECT coalesce(v.before, v.after) FROM journal_value v JOIN journal_step s ON s.id = v.step "
        "WHERE s.table_name = 'performance' AND v.column_name = 'carried' "
        "AND coalesce(v.before, v.after) IS NOT NULL)";
    database.run(std::string("DELETE FROM carried_chunk WHERE carried ") + kUnused);
    database.run(std::string("DELETE FROM carried WHERE id ") + kUnused);
}

void discard_undone(Database& database, std::int64_t before) {
    if (database.number("SELECT count(*) FROM journal_entry WHERE undone = 1 AND id < ?", before) == 0)
        return;
    database.run("DELETE FROM journal_value WHERE step IN (SELECT id FROM journal_step WHERE entry IN "
                 "(SELECT id FROM journal_entry WHERE undone = 1 AND id < ?))",
                 before);
    database.run(
        "DELETE FROM journal_step WHERE entry IN (SELECT id FROM journal_entry WHERE undone = 1 AND id < ?)",
        before);
    database.run("DELETE FROM journal_entry WHERE undone = 1 AND id < ?", before);
    drop_orphans(database);
}

enum class Direction { back, forth };

void expect_one(Database& database) {
    if (database.changes() != 1)
        throw Error(Fault::unreadable,
                    "The journal no longer fits the project: a row it speaks of is missing.",
                    "The project itself is unharmed; only undo and redo end here.");
}

/// Names out of the file go into SQL only when they are names of the schema.
void expect_name(const std::vector<std::string>& known, const std::string& name) {
    if (std::ranges::find(known, name) == known.end())
        throw Error(Fault::unreadable, "The journal speaks of '" + name + "', which a project doesn't have.",
                    "The project itself is unharmed; only undo and redo end here.");
}

void write_row(Database& database, std::int64_t step, const std::string& table, std::int64_t row,
               bool into_new_row, const char* side) {
    Statement values = database.query(
        std::string("SELECT column_name, ") + side + " FROM journal_value WHERE step = ?", step);
    std::vector<std::string> columns;
    while (values.step())
        columns.push_back(values.text(0));
    const std::vector<std::string> known = columns_of(database, table);
    std::string names;
    std::string places;
    for (const std::string& column : columns) {
        expect_name(known, column);
        const std::string comma = names.empty() ? "" : ", ";
        names += comma + '"' + column + '"' + (into_new_row ? "" : " = ?");
        places += comma + "?";
    }
    Statement write = database.prepare(
        into_new_row ? "INSERT INTO \"" + table + "\" (" + names + ") VALUES (" + places + ")"
                     : "UPDATE \"" + table + "\" SET " + names + " WHERE id = ?");
    values.reset();
    values.bind(step);
    int index = 0;
    while (values.step())
        write.bind_column(++index, values, 1);
    if (!into_new_row) write.bind_at(++index, row);
    write.run();
    expect_one(database);
}

void apply_step(Database& database, std::int64_t step, Direction direction) {
    Statement found =
        database.query("SELECT table_name, row_id, change FROM journal_step WHERE id = ?", step);
    found.step();
    const std::string table = found.text(0);
    const std::int64_t row = found.integer(1);
    const std::string change = found.text(2);
    expect_name(edited_tables(database), table);
    const bool back = direction == Direction::back;
    if (change == (back ? "added" : "removed")) {
        database.run("DELETE FROM \"" + table + "\" WHERE id = ?", row);
        expect_one(database);
    } else {
        write_row(database, step, table, row, change != "changed", back ? "before" : "after");
    }
}

std::optional<std::string> move_through(Database& database, Direction direction) {
    const bool back = direction == Direction::back;
    Unrecorded edit(database);
    Statement entry = database.prepare(
        back ? "SELECT id, label FROM journal_entry WHERE undone = 0 ORDER BY id DESC LIMIT 1"
             : "SELECT id, label FROM journal_entry WHERE undone = 1 ORDER BY id LIMIT 1");
    if (!entry.step()) return std::nullopt;
    const std::int64_t id = entry.integer(0);
    const std::string label = entry.text(1);
    entry.reset();
    // Rows come back in an order in which they may refer to each other; only the end counts.
    database.script("PRAGMA defer_foreign_keys = ON");
    std::vector<std::int64_t> steps;
    Statement rows = database.query(
        std::string("SELECT id FROM journal_step WHERE entry = ? ORDER BY id") + (back ? " DESC" : ""), id);
    while (rows.step())
        steps.push_back(rows.integer(0));
    for (const std::int64_t step : steps)
        apply_step(database, step, direction);
    database.run("UPDATE journal_entry SET undone = ? WHERE id = ?", back, id);
    edit.commit();
    return label;
}

} // namespace

Edit::Edit(Database& database) : database_(database), transaction_(database, Transaction::Kind::writing) {
    database_.run(std::string("INSERT INTO journal_entry (label, made_at, undone) VALUES ('', ") + kNow +
                  ", 0)");
    entry_ = database_.last_id();
    record_as(database_, entry_);
}

void Edit::commit(const std::string& label) {
    if (database_.number("SELECT count(*) FROM journal_step WHERE entry = ?", entry_) == 0) {
        database_.run("DELETE FROM journal_entry WHERE id = ?", entry_);
    } else {
        database_.run("UPDATE journal_entry SET label = ? WHERE id = ?", label, entry_);
        discard_undone(database_, entry_);
    }
    record_as(database_, std::nullopt);
    transaction_.commit();
}

Unrecorded::Unrecorded(Database& database)
    : database_(database), transaction_(database, Transaction::Kind::writing) {
    record_as(database_, 0);
}

void Unrecorded::commit() {
    record_as(database_, std::nullopt);
    transaction_.commit();
}

std::optional<std::string> undo_newest(Database& database) {
    return move_through(database, Direction::back);
}

std::optional<std::string> redo_next(Database& database) {
    return move_through(database, Direction::forth);
}

std::vector<JournalEntry> journal_entries(Database& database, int most) {
    std::vector<JournalEntry> entries;
    Statement rows =
        database.query("SELECT id, label, made_at, undone FROM journal_entry ORDER BY id DESC LIMIT ?", most);
    while (rows.step())
        entries.push_back({rows.integer(0), rows.text(1), rows.text(2), rows.truth(3)});
    return entries;
}

} // namespace luft::project
