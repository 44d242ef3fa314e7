#include "marks/breath_events.h"

#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

constexpr std::size_t kShortest = 8, kLongest = 130; // frames
constexpr double kLeastHeight = 5;                   // dB over the quiet
constexpr double kQuietest = -90; // dB; digital silence is quieter than any room: against it all is loud

double power_of(float level) {
    return std::pow(10.0, level / 10);
}

float sum_bands(const voice::BandLevels& b, std::size_t from, std::size_t to) {
    double sum = 0;
    for (std::size_t k = from; k < to; ++k)
        sum += power_of(b[k]);
    return static_cast<float>(power_level(sum).value());
}

float core_of(const voice::BandLevels& b) {
    return sum_bands(b, 2, 6);
}

/// The recording's level in the core band, and one gap's piece of it.
struct Place {
    std::span<const voice::BandLevels> bands;
    std::span<const float> tonality;
    std::vector<float> smooth; ///< core band of the whole recording
    voice::BandLevels quiet{}; ///< each band's own quiet
    double quietest = 0;
    double singing = 0; ///< middle level of the core while sung
};

Place look_at(const voice::Texture& texture, const std::vector<Run>& runs) {
    Place p{texture.bands(), texture.tonality(), {}, {}, 0, 0};
    std::vector<float> core, band;
    for (const auto& b : p.bands)
        core.push_back(core_of(b));
    p.smooth = signal::running_mean(core, 2);
    p.quietest = std::max(kQuietest, signal::quantile(core, 0.02).value_or(-100));
    for (std::size_t k = 0; k < voice::kBands; ++k) {
        band.clear();
        for (const auto& b : p.bands)
            band.push_back(b[k]);
        p.quiet[k] =
            static_cast<float>(std::max(kQuietest - 10, signal::quantile(band, 0.02).value_or(-100)));
    }
    std::vector<float> sung;
    for (const Run& r : runs)
        sung.insert(sung.end(), core.begin() + static_cast<std::ptrdiff_t>(r.begin),
                    core.begin() + static_cast<std::ptrdiff_t>(r.end));
    p.singing = signal::median(sung).value_or(0);
    return p;
}

double lowest(const std::vector<float>& x, std::size_t from, std::size_t to) {
    return *std::min_element(x.begin() + static_cast<std::ptrdiff_t>(from),
                             x.begin() + static_cast<std::ptrdiff_t>(std::max(to, from + 1)));
}

template <class Of>
double middle_over(const NoiseEvent& e, Of of) {
    std::vector<float> values;
    for (std::size_t i = e.begin; i < e.end; ++i)
        values.push_back(of(i));
    return signal::median(values).value_or(0);
}

void measure(const Place& p, const Gap& gap, std::size_t at, NoiseEvent& e) {
    const auto& b = p.bands;
    e.hiss = middle_over(e, [&](std::size_t i) { return sum_bands(b[i], 7, 10) - core_of(b[i]); });
    e.hush = middle_over(e, [&](std::size_t i) { return sum_bands(b[i], 5, 7) - sum_bands(b[i], 2, 5); });
    e.low = middle_over(e, [&](std::size_t i) { return sum_bands(b[i], 1, 3) - core_of(b[i]); });
    e.tonality = middle_over(e, [&](std::size_t i) { return p.tonality[i]; });
    for (std::size_t k = 0; k < kShapeBands; ++k) {
        double sum = 0;
        for (std::size_t i = e.begin; i < e.end; ++i)
            sum += power_of(b[i][k + 2]);
        const double mean = sum / static_cast<double>(e.end - e.begin), quiet = power_of(p.quiet[k + 2]);
        e.shape[k] = static_cast<float>(power_level(std::max(mean - quiet, 0.1 * quiet)).value());
    }
    e.below = p.singing - p.smooth[at];
    e.rise = p.smooth[at] - lowest(p.smooth, gap.begin, at + 1);
    e.fall = p.smooth[at] - lowest(p.smooth, at, gap.end);
    e.length = kHop * static_cast<double>(e.end - e.begin);
    e.since = kHop * static_cast<double>(e.begin - gap.begin);
    e.until = kHop * static_cast<double>(gap.end - std::min(e.end, gap.end));
}

/// The last frame from `top` towards `last` before the level falls under `least`, or before it turns and
/// rises again: there the next sound begins.
std::size_t edge_of(const std::vector<float>& level, std::size_t top, std::size_t last, std::ptrdiff_t step,
                    double least) {
    constexpr float kTurn = 7; // dB; noise flutters by less
    std::size_t lowest = top, i = top;
    while (i != last) {
        const std::size_t next = i + static_cast<std::size_t>(step);
        if (level[next] <= least) return i;
        if (level[next] < level[lowest]) lowest = next;
        if (level[next] > level[lowest] + kTurn) return lowest;
        i = next;
    }
    return last;
}

void events_in(const Place& p, const std::vector<Gap>& gaps, std::size_t g, std::vector<NoiseEvent>& events) {
    // The frame of 85 ms reaches into the notes on both sides; those frames show the notes.
    constexpr std::size_t kAfterNote = 4, kBeforeNote = 2;
    const Gap& gap = gaps[g];
    const std::size_t begin = gap.begin + (gap.after_singing ? kAfterNote : 0);
    const std::size_t end = gap.end - std::min(gap.end, gap.before_singing ? kBeforeNote : 0);
    if (end < begin + kShortest) return;
    const auto here = std::span<const float>(p.smooth).subspan(begin, end - begin);
    const double floor = std::max(p.quietest, signal::quantile(here, 0.1).value_or(-100) - 3);
    std::size_t last = begin;
    for (std::size_t i = begin + 1; i + 1 < end; ++i) {
        const float level = p.smooth[i];
        if (level < p.smooth[i - 1] || level < p.smooth[i + 1] || level < floor + kLeastHeight) continue;
        const double depth = std::clamp((level - floor) * 0.6, 5.0, 14.0);
        NoiseEvent e;
        e.gap = g;
        e.begin = edge_of(p.smooth, i, begin, -1, level - depth);
        e.end = edge_of(p.smooth, i, end - 1, +1, level - depth) + 1;
        if (e.begin < last || e.end - e.begin < kShortest || e.end - e.begin > kLongest) continue;
        last = e.end;
        e.over_quiet = level - floor;
        measure(p, gap, i, e);
        events.push_back(e);
    }
}

} // namespace

std::vector<Gap> gaps_between(const std::vector<Run>& runs, std::size_t frames) {
    std::vector<Gap> gaps;
    if (runs.empty()) return gaps;
    constexpr std::size_t kLead = 250; // a breath stands within 2.5 s before its phrase
    gaps.push_back(
        {runs.front().begin > kLead ? runs.front().begin - kLead : 0, runs.front().begin, true, false});
    for (std::size_t k = 0; k + 1 < runs.size(); ++k)
        gaps.push_back({runs[k].end, runs[k + 1].begin, true, true});
    gaps.push_back({runs.back().end, std::min(frames, runs.back().end + kLead), false, true});
    return gaps;
}

std::vector<NoiseEvent> noise_events(const voice::Hearing& hearing, const std::vector<Run>& runs,
                                     const std::vector<Gap>& gaps) {
    std::vector<NoiseEvent> events;
    const Place place = look_at(hearing.texture, runs);
    for (std::size_t g = 0; g < gaps.size(); ++g)
        events_in(place, gaps, g, events);
    return events;
}

} // namespace luft::marks
