#include "compare/runs.h"

#include <algorithm>

namespace luft::compare {
namespace {

constexpr float kSings = 0.5F;

/// Cells at which one side stands still, from `from` on: how many.
std::size_t waiting(const std::vector<Cell>& path, std::size_t from, std::int32_t Cell::*stands) {
    std::size_t n = from;
    while (n + 1 < path.size() && path[n + 1].kind == Cell::Kind::together &&
           path[n + 1].*stands == path[from].*stands)
        ++n;
    return n - from;
}

/// Marks what one side passes while the other waits in silence as having no counterpart.
std::vector<Cell> free_of_waiting(std::vector<Cell> path, const Columns& a, const Columns& b) {
    const auto least = static_cast<std::size_t>(kLeastAlone / a.hop);
    for (std::size_t n = 0; n < path.size(); ++n) {
        if (path[n].kind != Cell::Kind::together) continue;
        const std::size_t for_a = waiting(path, n, &Cell::a), for_b = waiting(path, n, &Cell::b);
        const bool a_silent = a.all[static_cast<std::size_t>(path[n].a)].voiced < kSings;
        const bool b_silent = b.all[static_cast<std::size_t>(path[n].b)].voiced < kSings;
        if (for_a >= least && a_silent)
            for (std::size_t k = n + 1; k <= n + for_a; ++k)
                path[k].kind = Cell::Kind::b_alone;
        else if (for_b >= least && b_silent)
            for (std::size_t k = n + 1; k <= n + for_b; ++k)
                path[k].kind = Cell::Kind::a_alone;
        n += std::max(for_a, for_b);
    }
    return path;
}

Pair corner(const Columns& a, const Columns& b, std::int32_t i, std::int32_t j) {
    return {a.start + a.hop * i, b.start + b.hop * j};
}

} // namespace

std::vector<Run> cut_into_runs(const std::vector<Cell>& cells, const Columns& a, const Columns& b) {
    std::vector<Run> runs;
    bool inside = false;
    for (const Cell& c : free_of_waiting(cells, a, b)) {
        if (c.kind != Cell::Kind::together) {
            inside = false;
            continue;
        }
        if (!inside) runs.push_back({{corner(a, b, c.a, c.b)}, {}});
        inside = true;
        runs.back().corners.push_back(corner(a, b, c.a + 1, c.b + 1));
        runs.back().unlikeness.push_back(
            unlikeness(a.all[static_cast<std::size_t>(c.a)], b.all[static_cast<std::size_t>(c.b)]));
    }
    const auto short_one = [](const Run& r) {
        return std::max(r.corners.back().a - r.corners.front().a, r.corners.back().b - r.corners.front().b) <
               kLeastAlone;
    };
    std::vector<Run> out;
    for (Run& run : runs) {
        if (!out.empty()) {
            const Pair &left = out.back().corners.back(), &right = run.corners.front();
            if (std::max(right.a - left.a, right.b - left.b) < kLeastAlone) {
                out.back().unlikeness.push_back(1); // the bridge
                out.back().corners.insert(out.back().corners.end(), run.corners.begin(), run.corners.end());
                out.back().unlikeness.insert(out.back().unlikeness.end(), run.unlikeness.begin(),
                                             run.unlikeness.end());
                continue;
            }
        }
        if (!out.empty() && short_one(out.back())) out.pop_back();
        out.push_back(std::move(run));
    }
    if (!out.empty() && short_one(out.back()) && out.size() > 1) out.pop_back();
    return out;
}

} // namespace luft::compare
