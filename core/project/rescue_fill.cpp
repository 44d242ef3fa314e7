#include "project/rescue_fill.h"

#include "base/error.h"

#include <algorithm>

namespace luft::project {
namespace {

std::string insert_sql(const TableShape& shape) {
    std::string names, values;
    for (const auto& column : shape.columns) {
        names += (names.empty() ? "" : ", ") + column.name;
        values += values.empty() ? "?" : ", ?";
    }
    return "INSERT INTO " + shape.table + " (" + names + ") VALUES (" + values + ")";
}

} // namespace

Filler::Filler(Database& to, const TableShape& shape)
    : shape_(shape), insert_(to.prepare(insert_sql(shape))) {}

std::size_t Filler::take(const std::vector<StoredRow>& rows) {
    return static_cast<std::size_t>(
        std::ranges::count_if(rows, [this](const StoredRow& row) { return take_row(row); }));
}

std::size_t Filler::would_take(Database& to, const std::vector<StoredRow>& rows) {
    to.script("SAVEPOINT trial");
    std::size_t n = 0;
    for (const StoredRow& row : rows)
        if (shape_.fits(row) && !ids_.contains(row.rowid) && insert(row)) ++n;
    to.script("ROLLBACK TO trial; RELEASE trial");
    return n;
}

bool Filler::take_row(const StoredRow& row) {
    if (!shape_.fits(row)) return false;
    if (!ids_.insert(row.rowid).second) return true;
    if (!insert(row)) {
        ids_.erase(row.rowid);
        ++refused_;
    }
    return true;
}

bool Filler::insert(const StoredRow& row) {
    try {
        for (std::size_t i = 0; i < row.values.size(); ++i)
            bind(static_cast<int>(i) + 1,
                 shape_.columns[i].is_rowid ? StoredValue(row.rowid) : row.values[i]);
        insert_.run();
        return true;
    } catch (const Error& e) {
        insert_.reset();
        // What the table's own rules refuse, and what is no number.
        if (e.fault() != Fault::internal && e.fault() != Fault::bad_request) throw;
        return false;
    }
}

void Filler::bind(int index, const StoredValue& value) {
    std::visit(
        [&](const auto& v) {
            if constexpr (std::is_same_v<std::decay_t<decltype(v)>, std::vector<std::byte>>)
                insert_.bind_at(index, std::span<const std::byte>(v));
            else
                insert_.bind_at(index, v);
        },
        value);
}

Filler* best_for(const std::vector<StoredRow>& rows, std::map<std::string, Filler>& fillers, Database& to) {
    Filler* best = nullptr;
    std::size_t most = 0;
    for (auto& [table, filler] : fillers) {
        const std::size_t n = filler.would_take(to, rows);
        if (n == most) best = nullptr;
        if (n > most) best = &filler;
        most = std::max(most, n);
    }
    return best;
}

} // namespace luft::project
