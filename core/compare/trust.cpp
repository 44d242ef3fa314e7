#include "compare/trust.h"

#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::compare {
namespace {

// The fit; see trust.h.
constexpr double kAll = -2.75, kUnlikeness = -6.31, kUnevenness = -9.88, kMet = 10.28;
constexpr Confidence kChance{0.4}, kSure{0.6}; // own values

/// Mean unlikeness of the run where A is within a span.
double unlikeness_within(const Run& run, Span a) {
    double sum = 0;
    int n = 0;
    for (std::size_t i = 0; i < run.unlikeness.size(); ++i)
        if (a.contains(run.corners[i].a)) sum += static_cast<double>(run.unlikeness[i]), ++n;
    return n > 0 ? sum / n : 0;
}

double unevenness_of(const std::vector<Pair>& knots) {
    const auto slope = [](const Pair& from, const Pair& to) {
        return std::log((to.b - from.b) / (to.a - from.a));
    };
    const double whole = slope(knots.front(), knots.back());
    double sum = 0, weight = 0;
    for (std::size_t i = 1; i < knots.size(); ++i) {
        const double off = slope(knots[i - 1], knots[i]) - whole;
        const double length = (knots[i].a - knots[i - 1].a + knots[i].b - knots[i - 1].b).value();
        sum += length * off * off, weight += length;
    }
    return std::sqrt(sum / weight);
}

double met_share(const Stretch& stretch, const Side& a, const Side& b) {
    const auto begins = [](const std::vector<marks::Note>& notes, Span s) {
        return std::ranges::count_if(notes, [s](const marks::Note& n) { return s.contains(n.span.start); });
    };
    const auto all = begins(a.notes, stretch.a()) + begins(b.notes, stretch.b());
    if (all == 0) return 1;
    const auto met = std::count_if(stretch.knots.begin(), stretch.knots.end() - 1, [&](const Pair& knot) {
        const auto here = [](const std::vector<marks::Note>& notes, Seconds t) {
            const auto n =
                std::ranges::lower_bound(notes, t, {}, [](const marks::Note& m) { return m.span.start; });
            return n != notes.end() && n->span.start == t;
        };
        return here(a.notes, knot.a) && here(b.notes, knot.b);
    });
    return std::min(1.0, 2 * static_cast<double>(met) / static_cast<double>(all));
}

bool meet(const Stretch& left, const Stretch& right) {
    return left.knots.back() == right.knots.front();
}

} // namespace

void judge(Stretch& stretch, const Run& run, const Side& a, const Side& b) {
    stretch.unlikeness = unlikeness_within(run, stretch.a());
    stretch.unevenness = unevenness_of(stretch.knots);
    stretch.met = met_share(stretch, a, b);
    stretch.confidence = {signal::logistic(kAll + kUnlikeness * stretch.unlikeness +
                                           kUnevenness * stretch.unevenness + kMet * stretch.met)};
}

void leave_out_chance(std::vector<Stretch>& stretches, const std::vector<Pair>& pins) {
    std::vector<Stretch> kept;
    for (std::size_t i = 0; i < stretches.size(); ++i) {
        const Stretch& s = stretches[i];
        const auto sure = [](const Stretch& other) { return other.confidence >= kSure; };
        const bool held = i > 0 && i + 1 < stretches.size() && meet(stretches[i - 1], s) &&
                          meet(s, stretches[i + 1]) && sure(stretches[i - 1]) && sure(stretches[i + 1]);
        const bool pinned = std::ranges::any_of(
            pins, [&](const Pair& p) { return s.knots.front().a <= p.a && p.a <= s.knots.back().a; });
        if (s.confidence >= kChance || held || pinned) kept.push_back(s);
    }
    stretches = std::move(kept);
}

} // namespace luft::compare
