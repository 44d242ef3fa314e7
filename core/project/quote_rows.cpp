#include "project/quote_rows.h"

#include "project/store.h"

#include <string>

namespace luft::project {
namespace {

struct Place {
    std::string table, owner;
};

Place place_of(Quoting by) {
    return by == Quoting::moment ? Place{"moment_beside", "moment"} : Place{"script_quote", "item"};
}

} // namespace

std::optional<Quote> read_quote(const Statement& row, int column) {
    if (row.is_null(column)) return std::nullopt;
    return Quote{{row.integer(column)}, {row.unit<Seconds>(column + 1), row.unit<Seconds>(column + 2)}};
}

void write_quote(Database& database, Quoting by, std::int64_t owner, const std::optional<Quote>& quote) {
    const Place place = place_of(by);
    const bool stored =
        database.number("SELECT count(*) FROM " + place.table + " WHERE " + place.owner + " = ?", owner) > 0;
    if (!quote) {
        if (stored) database.run("DELETE FROM " + place.table + " WHERE " + place.owner + " = ?", owner);
    } else if (stored) {
        database.run("UPDATE " + place.table + " SET performance = ?, start_s = ?, end_s = ? WHERE " +
                         place.owner + " = ?",
                     quote->performance.value, quote->span.start, quote->span.end, owner);
    } else {
        database.run("INSERT INTO " + place.table + " (" + place.owner +
                         ", performance, start_s, end_s) VALUES (?, ?, ?, ?)",
                     owner, quote->performance.value, quote->span.start, quote->span.end);
    }
}

void demand_quote(Database& database, const std::optional<Quote>& quote, PerformanceId owners) {
    if (!quote) return;
    demand_span(quote->span, "the quote");
    label_of(database, quote->performance);
    demand(quote->performance != owners, "A quote is of another performance than one's own.",
           "To hear the same performance again, use a replay.");
}

} // namespace luft::project
