// Marks as rows of the table `mark`.
#pragma once

#include "project/database.h"
#include "project/model.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace luft::project {

/// A mark with the span that detection gave it before the coach moved it; none for the coach's own marks.
struct MarkRow {
    Mark mark;
    std::optional<Span> found;
};

/// Never touched by the coach: detecting again may replace it.
inline bool untouched(const Mark& mark) {
    return mark.state == MarkState::proposed && mark.origin == Origin::detected;
}

std::vector<MarkRow> read_mark_rows(Database& database, PerformanceId id);
/// The same, one after the other, without a list of them.
void for_each_mark_row(Database& database, PerformanceId id, const std::function<void(MarkRow&&)>& take);
std::optional<MarkRow> find_mark_row(Database& database, MarkId id);
/// Throws Error(not_found).
MarkRow read_mark_row(Database& database, MarkId id);

MarkId insert_mark(Database& database, const MarkRow& row);
/// Writes everything of the mark but performance and kind.
void update_mark(Database& database, const Mark& mark);
void delete_mark(Database& database, MarkId id);

/// The mark's values as one text, equal for marks that say the same at the same place.
std::string same_words(const Mark& mark);

} // namespace luft::project
