#include "compare/again.h"

#include "compare/path.h"

#include <algorithm>

namespace luft::compare {
namespace {

constexpr Seconds kLeast{4};
constexpr double kLeastShare = 0.5; // own values, as kLeast

/// Where a part's counterparts lie, when there are enough of them; `own` and `other` are the sides of a
/// stretch.
std::optional<Span> found_in(const Side& a, const Side& b, const Part& part, int key,
                             Span (Stretch::*own)() const, Span (Stretch::*other)() const,
                             const Progress& progress) {
    Alignment alignment;
    lay_path(alignment, runs_of(a, b, part, key, progress), a, b, {});
    Seconds found;
    for (const Stretch& s : alignment.stretches)
        found += (s.*own)().length();
    const Seconds whole = (own == &Stretch::a ? part.a : part.b).length();
    if (alignment.stretches.empty() || found < whole * kLeastShare) return std::nullopt;
    return Span{(alignment.stretches.front().*other)().start, (alignment.stretches.back().*other)().end};
}

/// The run up to where it stops being a counterpart: the corner up to which most is gained when each second
/// gains what it is more alike than kAlike.
Run while_alike(Run run) {
    constexpr double kAlike = 0.25; // own value: counterparts lie under it, chance over it (trust.h)
    double gained = 0, most = 0;
    std::size_t until = 0;
    for (std::size_t i = 0; i < run.unlikeness.size(); ++i) {
        const Pair &from = run.corners[i], &to = run.corners[i + 1];
        gained +=
            (kAlike - static_cast<double>(run.unlikeness[i])) * (to.a - from.a + to.b - from.b).value() / 2;
        if (gained > most) most = gained, until = i + 1;
    }
    run.corners.resize(until + 1);
    run.unlikeness.resize(until);
    return run;
}

/// Whether the whole of a run is surely a counterpart.
bool sure(const Run& run, const Side& a, const Side& b) {
    static constexpr Confidence kSure{0.9};
    Alignment alignment;
    lay_path(alignment, {run}, a, b, {});
    return !alignment.stretches.empty() &&
           std::ranges::all_of(alignment.stretches, [](const Stretch& s) { return s.confidence >= kSure; });
}

} // namespace

void find_again(Alignment& alignment, const Side& a, const Side& b, int key, const Progress& progress) {
    const Span all_a{Seconds(0), a.duration}, all_b{Seconds(0), b.duration};
    for (Alone& alone : alignment.only_a)
        if (alone.sung && alone.span.length() >= kLeast)
            alone.again =
                found_in(a, b, {.a = alone.span, .b = all_b}, key, &Stretch::a, &Stretch::b, progress);
    for (Alone& alone : alignment.only_b)
        if (alone.sung && alone.span.length() >= kLeast)
            alone.again =
                found_in(a, b, {.a = all_a, .b = alone.span}, key, &Stretch::b, &Stretch::a, progress);
}

std::vector<Pair> first_time_whole(const Alignment& alignment, const Side& a, const Side& b, int key,
                                   const Progress& progress) {
    constexpr double kSlower = 1.5; // how much slower the second time may be
    constexpr Seconds kNear{1};
    std::vector<Pair> out;
    for (std::size_t i = 1; i < alignment.stretches.size(); ++i) {
        const Pair &gap = alignment.stretches[i - 1].knots.back(),
                   &end = alignment.stretches[i].knots.front();
        const Seconds of_a = end.a - gap.a, of_b = end.b - gap.b;
        if (std::max(of_a, of_b) < kLeast || std::min(of_a, of_b) > kNear) continue;
        // What was left out, against what follows on the other side.
        const Part part{.a = {gap.a, of_a > of_b ? end.a : std::min(a.duration, gap.a + of_b * kSlower)},
                        .b = {gap.b, of_a > of_b ? std::min(b.duration, gap.b + of_a * kSlower) : end.b},
                        .free_start = false};
        const std::vector<Run> runs = runs_of(a, b, part, key, progress);
        if (runs.empty()) continue;
        const Pair& begin = runs.front().corners.front();
        if (begin.a - gap.a > kNear || begin.b - gap.b > kNear) continue;
        const Run again = while_alike(runs.front());
        const Pair& reached = again.corners.back();
        if (reached.a - gap.a > kNear && reached.b - gap.b > kNear && sure(again, a, b))
            out.push_back(reached);
    }
    return out;
}

} // namespace luft::compare
