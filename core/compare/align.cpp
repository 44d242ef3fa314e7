#include "compare/align.h"

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

} // namespace

Alignment align(const Side& a, const Side& b, const AlignOptions& options, const Progress& progress) {
    const std::vector<Pair> pins = borders(a, b, options.pins);
    std::vector<Part> parts;
    for (std::size_t i = 1; i < pins.size(); ++i)
        parts.push_back({.a = {pins[i - 1].a, pins[i].a},
                         .b = {pins[i - 1].b, pins[i].b},
                         .free_start = i == 1,
                         .free_end = i + 1 == pins.size()});
    const int key = likeliest_key(a, b, parts, progress.part(0, 0.4));
    std::vector<Run> runs;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const double share = 1 / static_cast<double>(parts.size());
        const Progress own = progress.part(0.4 + 0.6 * share * static_cast<double>(i),
                                           0.4 + 0.6 * share * static_cast<double>(i + 1));
        for (Run& run : runs_of(a, b, parts[i], key, own))
            runs.push_back(std::move(run));
    }

    Alignment out;
    out.tuning = interval(a.tuning, b.tuning);
    const double sounding = interval_of(runs, a, b).value_or(0);
    const double written = (sounding - out.tuning.value()) / 100;
    out.semitones = key + 12 * static_cast<int>(std::lround((written - key) / 12));
    lay_path(out, runs, a, b, std::vector<Pair>(pins.begin() + 1, pins.end() - 1));
    progress.step(1, "done");
    return out;
}

} // namespace luft::compare
