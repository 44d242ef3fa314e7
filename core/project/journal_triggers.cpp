// The recording triggers, made from the tables themselves so that no table and no column can be left out.
#include "project/journal.h"
#include "project/schema.h"

namespace luft::project {
namespace {

std::string quoted(const std::string& name) {
    return '"' + name + '"';
}

std::string literal(const std::string& text) {
    return "'" + text + "'";
}

/// journal_now.entry: NULL = no edit is open, 0 = not recorded, else the open edit's entry.
std::string head(const std::string& table, const std::string& change, const std::string& event,
                 const std::string& only_when) {
    return "CREATE TEMP TRIGGER journal_" + change + "_" + table + " AFTER " + event + " ON main." +
           quoted(table) + " WHEN (SELECT entry FROM journal_now) IS NOT 0" + only_when +
           " BEGIN SELECT RAISE(ABORT, 'edit outside the journal') "
           "WHERE (SELECT entry FROM journal_now) IS NULL; ";
}

std::string step(const std::string& table, const std::string& change, const std::string& row) {
    return "INSERT INTO journal_step (entry, table_name, row_id, change) SELECT entry, " + literal(table) +
           ", " + row + ".id, " + literal(change) + " FROM journal_now; ";
}

// journal_value has no rowid, so last_insert_rowid() goes on naming the step.
std::string value(const std::string& column, const std::string& before, const std::string& after) {
    return "INSERT INTO journal_value SELECT last_insert_rowid(), " + literal(column) + ", " + before + ", " +
           after;
}

void install_on(Database& database, const std::string& table) {
    // A row's values are in the journal only while the row itself is away: an added one's aren't yet.
    const std::string added = head(table, "added", "INSERT", "") + step(table, "added", "NEW");
    std::string removed = head(table, "removed", "DELETE", "") + step(table, "removed", "OLD");
    std::string differs = "FALSE";
    std::string values;
    for (const std::string& column : columns_of(database, table)) {
        const std::string before = "OLD." + quoted(column);
        const std::string after = "NEW." + quoted(column);
        const std::string differ = before + " IS NOT " + after;
        differs += " OR " + differ;
        removed += value(column, before, "NULL") + "; ";
        values += value(column, before, after) + " WHERE " + differ + "; ";
    }
    database.script(added + "END");
    database.script(removed + "END");
    database.script(head(table, "changed", "UPDATE", " AND (" + differs + ")") +
                    step(table, "changed", "NEW") + values + "END");
}

} // namespace

void install_journal(Database& database) {
    database.script("CREATE TEMP TABLE journal_now (entry INTEGER); INSERT INTO journal_now VALUES (NULL);");
    for (const std::string& table : edited_tables(database))
        install_on(database, table);
}

} // namespace luft::project
