#include "compare/align.h"

#include "compare/again.h"
#include "compare/levels.h"
#include "compare/path.h"
#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::compare {
namespace {

std::vector<Pair> borders(const Side& a, const Side& b, std::vector<Pair> pins) {
    std::ranges::sort(pins, {}, &Pair::a);
    pins.insert(pins.begin(), Pair{});
    pins.push_back({a.duration, b.duration});
    for (std::size_t i = 1; i < pins.size(); ++i)
        if (pins[i].a < pins[i - 1].a || pins[i].b < pins[i - 1].b)
            throw Error(Fault::bad_request,
                        "Two pinned pairs cross each other, or one lies outside a recording.",
                        "Take one of them back: later in one performance has to be later in the other.");
    return pins;
}

/// Medians of B's pitch over A's along the path; none when they never sing together.
std::optional<double> interval_of(const std::vector<Run>& runs, const Side& a, const Side& b) {
    std::vector<float> apart;
    for (const Run& run : runs)
        for (const Pair& p : run.corners) {
            const auto low = a.f0.at(p.a), high = b.f0.at(p.b);
            if (low && high) apart.push_back(static_cast<float>(interval(*low, *high).value()));
        }
    return signal::median(apart);
}

/// How much of A has a counterpart, each second weighed by its confidence.
Seconds aligned(const Alignment& alignment) {
    Seconds sum;
    for (const Stretch& s : alignment.stretches)
        sum += s.a().length() * s.confidence.value;
    return sum;
}

std::vector<Part> parts_between(const std::vector<Pair>& borders) {
    std::vector<Part> parts;
    for (std::size_t i = 1; i < borders.size(); ++i)
        parts.push_back({.a = {borders[i - 1].a, borders[i].a},
                         .b = {borders[i - 1].b, borders[i].b},
                         .free_start = i == 1,
                         .free_end = i + 1 == borders.size()});
    return parts;
}

std::vector<Run> all_runs(const Side& a, const Side& b, const std::vector<Part>& parts, int key,
                          const Progress& progress) {
    std::vector<Run> runs;
    const double share = 1 / static_cast<double>(parts.size());
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const auto done = static_cast<double>(i);
        for (Run& run : runs_of(a, b, parts[i], key, progress.part(share * done, share * (done + 1))))
            runs.push_back(std::move(run));
    }
    return runs;
}

} // namespace

Alignment align(const Side& a, const Side& b, const AlignOptions& options, const Progress& progress) {
    const std::vector<Pair> ends = borders(a, b, options.pins);
    const std::vector<Pair> pins(ends.begin() + 1, ends.end() - 1);
    const std::vector<Part> parts = parts_between(ends);
    const int key = likeliest_key(a, b, parts, progress.part(0, 0.3));
    std::vector<Run> runs = all_runs(a, b, parts, key, progress.part(0.3, 0.6));

    Alignment out;
    lay_path(out, runs, a, b, pins);
    std::vector<Pair> whole = first_time_whole(out, a, b, key, progress.part(0.6, 0.7));
    if (!whole.empty()) {
        whole.insert(whole.end(), pins.begin(), pins.end());
        Alignment other;
        std::vector<Run> other_runs =
            all_runs(a, b, parts_between(borders(a, b, whole)), key, progress.part(0.7, 0.9));
        lay_path(other, other_runs, a, b, pins);
        if (aligned(other) >= aligned(out) - Seconds(1)) { // else it was no second time
            out = std::move(other);
            runs = std::move(other_runs);
        }
    }
    out.tuning = interval(a.tuning, b.tuning);
    const double sounding = interval_of(runs, a, b).value_or(0);
    const double written = (sounding - out.tuning.value()) / 100;
    out.semitones = key + 12 * static_cast<int>(std::lround((written - key) / 12));
    find_again(out, a, b, key, progress.part(0.9, 1));
    progress.step(1, "done");
    return out;
}

} // namespace luft::compare
