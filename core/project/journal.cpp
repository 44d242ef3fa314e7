#include "project/journal.h"

#include "base/error.h"
#include "project/schema.h"

#include <algorithm>
#include <map>

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

/// The steps of one entry, applied one way.
class Replay {
  public:
    Replay(Database& database, Direction direction)
        : database_(database), back_(direction == Direction::back), side_(back_ ? "after" : "before"),
          values_(database.prepare(std::string("SELECT column_name, ") + (back_ ? "before" : "after") +
                                   " FROM journal_value WHERE step = ?")) {
        for (const std::string& table : edited_tables(database))
            columns_[table] = columns_of(database, table);
    }

    void apply(std::int64_t step, const std::string& table, std::int64_t row, const std::string& change) {
        // Names out of the file go into SQL only when they are names of the schema.
        const auto known = columns_.find(table);
        if (known == columns_.end()) throw unknown(table);
        if (change == (back_ ? "added" : "removed"))
            take_away(step, table, row, known->second);
        else if (change == "changed")
            update(step, table, row, known->second);
        else
            bring_back(step, table, known->second);
    }

  private:
    // A row's values are in the journal only while the row itself is away.
    void take_away(std::int64_t step, const std::string& table, std::int64_t row,
                   const std::vector<std::string>& known) {
        for (const std::string& column : known)
            database_.run("INSERT INTO journal_value (step, column_name, " + side_ + ") SELECT ?, ?, \"" +
                              column + "\" FROM \"" + table + "\" WHERE id = ?",
                          step, column, row);
        database_.run("DELETE FROM \"" + table + "\" WHERE id = ?", row);
        expect_one();
    }

    void bring_back(std::int64_t step, const std::string& table, const std::vector<std::string>& known) {
        const std::vector<std::string> columns = columns_at(step, known);
        std::string names;
        std::string places;
        for (const std::string& column : columns) {
            names += (names.empty() ? "\"" : ", \"") + column + '"';
            places += places.empty() ? "?" : ", ?";
        }
        fill(database_.prepared("INSERT INTO \"" + table + "\" (" + names + ") VALUES (" + places + ")"),
             step);
        database_.run("DELETE FROM journal_value WHERE step = ?", step);
    }

    void update(std::int64_t step, const std::string& table, std::int64_t row,
                const std::vector<std::string>& known) {
        const std::vector<std::string> columns = columns_at(step, known);
        std::string names;
        for (const std::string& column : columns)
            names += (names.empty() ? "\"" : ", \"") + column + "\" = ?";
        Statement& write = database_.prepared("UPDATE \"" + table + "\" SET " + names + " WHERE id = ?");
        write.bind_at(static_cast<int>(columns.size()) + 1, row);
        fill(write, step);
    }

    std::vector<std::string> columns_at(std::int64_t step, const std::vector<std::string>& known) {
        std::vector<std::string> columns;
        values_.bind(step);
        while (values_.step())
            columns.push_back(values_.text(0));
        values_.reset();
        for (const std::string& column : columns)
            if (std::ranges::find(known, column) == known.end()) throw unknown(column);
        return columns;
    }

    void fill(Statement& write, std::int64_t step) {
        values_.bind(step);
        for (int index = 1; values_.step(); ++index)
            write.bind_column(index, values_, 1);
        values_.reset();
        write.run();
        expect_one();
    }

    void expect_one() const {
        if (database_.changes() != 1)
            throw Error(Fault::unreadable,
                        "The journal no longer fits the project: a row it speaks of is missing.",
                        "The project itself is unharmed; only undo and redo end here.");
    }

    static Error unknown(const std::string& name) {
        return {Fault::unreadable, "The journal speaks of '" + name + "', which a project doesn't have.",
                "The project itself is unharmed; only undo and redo end here."};
    }

    Database& database_;
    bool back_;
    std::string side_; ///< where the values of a row go that this direction takes away
    Statement values_;
    std::map<std::string, std::vector<std::string>> columns_;
};

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
    Replay replay(database, direction);
    Statement steps = database.query(
        std::string("SELECT id, table_name, row_id, change FROM journal_step WHERE entry = ? ORDER BY id") +
            (back ? " DESC" : ""),
        id);
    while (steps.step())
        replay.apply(steps.integer(0), steps.text(1), steps.integer(2), steps.text(3));
    steps.reset();
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
    database_.expect_in_place();
    transaction_.commit();
}

Unrecorded::Unrecorded(Database& database)
    : database_(database), transaction_(database, Transaction::Kind::writing) {
    record_as(database_, 0);
}

void Unrecorded::commit() {
    record_as(database_, std::nullopt);
    database_.expect_in_place();
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

bool journal_is_whole(Database& database) {
    constexpr const char* kAmiss[] = {
        "SELECT 1 FROM journal_step WHERE entry NOT IN (SELECT id FROM journal_entry)",
        "SELECT 1 FROM journal_value WHERE step NOT IN (SELECT id FROM journal_step)",
        "SELECT 1 FROM journal_entry WHERE id NOT IN (SELECT entry FROM journal_step)",
        "SELECT 1 FROM (SELECT entry, lag(entry, 1, 0) OVER (ORDER BY id) AS before FROM journal_step) "
        "WHERE entry < before",
        "SELECT 1 FROM (SELECT undone, lag(undone, 1, 0) OVER (ORDER BY id) AS before FROM journal_entry) "
        "WHERE undone < before",
    };
    return std::ranges::none_of(kAmiss, [&](const char* amiss) { return database.prepare(amiss).step(); });
}

} // namespace luft::project
