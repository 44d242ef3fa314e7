#include "compare/levels.h"

#include "compare/runs.h"

#include <algorithm>

namespace luft::compare {
namespace {

constexpr Seconds kKeyHop{0.75}, kCoarseHop{0.25}, kMiddleHop{0.1}, kFineHop{0.02};
constexpr double kMostKeyColumns = 800, kMostCoarseColumns = 2400;
constexpr Seconds kAroundCoarse{2}, kAroundMiddle{0.4};

Seconds hop_for(const Part& part, Seconds least, double most_columns) {
    return std::max(least, std::max(part.a.length(), part.b.length()) / most_columns);
}

Columns turned(const Side& side, Span part, Seconds hop, int key) {
    Columns columns = columns_of(side, part, hop);
    turn(columns, key);
    return columns;
}

} // namespace

int likeliest_key(const Side& a, const Side& b, const std::vector<Part>& parts, const Progress& progress) {
    std::array<double, 12> cost{};
    for (const Part& part : parts) {
        const Seconds hop = hop_for(part, kKeyHop, kMostKeyColumns);
        const Columns of_a = columns_of(a, part.a, hop);
        Columns of_b = columns_of(b, part.b, hop);
        for (std::size_t key = 0; key < 12; ++key) {
            progress.step(static_cast<double>(key) / 12, "finding the key");
            cost[key] += warp(of_a, of_b, whole(of_a, of_b), part.free_start, part.free_end).cost *
                         (part.a.length() + part.b.length()).value();
            turn(of_b, 1);
        }
    }
    return static_cast<int>(std::ranges::min_element(cost) - cost.begin());
}

std::vector<Run> runs_of(const Side& a, const Side& b, const Part& part, int key, const Progress& progress) {
    if (part.a.length() < kCoarseHop || part.b.length() < kCoarseHop) return {};
    const Seconds hop = hop_for(part, kCoarseHop, kMostCoarseColumns);
    progress.step(0, "aligning");
    Columns of_a = columns_of(a, part.a, hop), of_b = turned(b, part.b, hop, key);
    Warping found = warp(of_a, of_b, whole(of_a, of_b), part.free_start, part.free_end);
    Seconds before = hop, around = std::max(kAroundCoarse, hop * 3);
    for (const Seconds finer : {kMiddleHop, kFineHop}) {
        progress.step(finer == kMiddleHop ? 0.3 : 0.5, "aligning");
        of_a = columns_of(a, part.a, finer);
        of_b = turned(b, part.b, finer, key);
        const Band band = around_path(found, before, of_a, of_b, around);
        found = warp(of_a, of_b, band, part.free_start, part.free_end);
        before = finer, around = kAroundMiddle;
    }
    std::vector<Run> runs = cut_into_runs(found.path, of_a, of_b);
    for (Run& run : runs) // the last column may reach beyond the part
        for (Pair& p : run.corners)
            p = {std::min(p.a, part.a.end), std::min(p.b, part.b.end)};
    return runs;
}

} // namespace luft::compare
