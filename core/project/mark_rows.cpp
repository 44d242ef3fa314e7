#include "project/mark_rows.h"

#include "project/mark_detail.h"
#include "project/words.h"

#include <bit>

namespace luft::project {
namespace {

constexpr const char* kSelect = "SELECT id, performance, kind, state, origin, start_s, end_s, confidence, "
                                "evidence, detail, found_start_s, found_end_s FROM mark ";

MarkRow read_row(const Statement& row, DetailReader& details) {
    MarkRow r;
    r.mark.id = {row.integer(0)};
    r.mark.performance = {row.integer(1)};
    r.mark.state = read_word<MarkState>(row.text(3));
    r.mark.origin = read_word<Origin>(row.text(4));
    details.put(r.mark, read_word<MarkKind>(row.text(2)), {row.unit<Seconds>(5), row.unit<Seconds>(6)},
                {row.real(7)}, row.text(8), row.text(9));
    if (!row.is_null(10)) r.found = Span{row.unit<Seconds>(10), row.unit<Seconds>(11)};
    return r;
}

} // namespace

void for_each_mark_row(Database& database, PerformanceId id, const std::function<void(MarkRow&&)>& take) {
    Statement rows =
        database.query(std::string(kSelect) + "WHERE performance = ? ORDER BY start_s, end_s, id", id.value);
    DetailReader details;
    while (rows.step())
        take(read_row(rows, details));
}

std::vector<MarkRow> read_mark_rows(Database& database, PerformanceId id) {
    std::vector<MarkRow> all;
    for_each_mark_row(database, id, [&](MarkRow&& row) { all.push_back(std::move(row)); });
    return all;
}

std::optional<MarkRow> find_mark_row(Database& database, MarkId id) {
    Statement row = database.query(std::string(kSelect) + "WHERE id = ?", id.value);
    if (!row.step()) return std::nullopt;
    DetailReader details;
    return read_row(row, details);
}

MarkRow read_mark_row(Database& database, MarkId id) {
    if (auto row = find_mark_row(database, id)) return *std::move(row);
    throw Error(Fault::not_found, "There is no mark with the number " + std::to_string(id.value) + ".",
                "Detecting again may have replaced it; look at the list of marks.");
}

MarkId insert_mark(Database& database, const MarkRow& row) {
    const Mark& m = row.mark;
    const Span span = m.span();
    std::optional<Seconds> found_start;
    std::optional<Seconds> found_end;
    if (row.found) {
        found_start = row.found->start;
        found_end = row.found->end;
    }
    database.run("INSERT INTO mark (performance, kind, state, origin, start_s, end_s, confidence, evidence, "
                 "detail, found_start_s, found_end_s) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                 m.performance.value, word(m.kind()), word(m.state), word(m.origin), span.start, span.end,
                 m.confidence().value, m.evidence(), detail_text(m), found_start, found_end);
    return {database.last_id()};
}

void update_mark(Database& database, const Mark& m) {
    const Span span = m.span();
    database.run(
        "UPDATE mark SET state = ?, origin = ?, start_s = ?, end_s = ?, confidence = ?, evidence = ?, "
        "detail = ? WHERE id = ?",
        word(m.state), word(m.origin), span.start, span.end, m.confidence().value, m.evidence(),
        detail_text(m), m.id.value);
}

void delete_mark(Database& database, MarkId id) {
    database.run("DELETE FROM mark WHERE id = ?", id.value);
}

std::string same_words(const Mark& mark) {
    const auto exact = [](double v) { return std::to_string(std::bit_cast<std::uint64_t>(v)) + ' '; };
    return std::string(word(mark.kind())) + ' ' + exact(mark.span().start.value()) +
           exact(mark.span().end.value()) + exact(mark.confidence().value) + mark.evidence() + ' ' +
           detail_text(mark);
}

} // namespace luft::project
