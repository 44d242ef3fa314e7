#include "project/changes.h"

#include <utility>

namespace luft::project {
namespace {

/// Reading more marks one by one takes longer than reading all. Our choice, no source.
constexpr std::size_t kMostMarks = 2000;

} // namespace

void ChangeLog::written(std::string_view table, std::int64_t row) {
    if (table == "mark") {
        if (marks_.size() < kMostMarks)
            marks_.insert(row);
        else
            since_.everything = true;
    } else if (table == "piece") {
        since_.piece = true;
    } else if (table == "facet" || table == "shade" || table == "drill") {
        since_.vocabulary = true;
    } else if (table == "moment" || table == "moment_shade" || table == "moment_beside") {
        since_.moments = true;
    } else if (table == "sung_word") {
        since_.sung_words = true;
    } else if (table == "script_item" || table == "script_quote") {
        since_.script = true;
    }
}

Changes ChangeLog::take(Database& database) {
    const std::int64_t version = database.number("PRAGMA data_version");
    Changes changes = std::exchange(since_, {});
    for (const std::int64_t row : std::exchange(marks_, {}))
        changes.marks.push_back({row});
    if (std::exchange(version_, version) != version) changes.everything = true;
    return changes;
}

} // namespace luft::project
