#include "marks/breaths.h"

#include "base/text.h"
#include "signal/statistics.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace luft::marks {
namespace {

constexpr std::size_t kShortest = 9, kLongest = 130; // frames
constexpr std::size_t kLeastInferredGap = 25;

/// The band levels of one frame, summed as a breath is looked at.
struct Colour {
    float low;  ///< 150-800 Hz
    float core; ///< 400 Hz-3 kHz: where a breath has its bulk
    float hiss; ///< over 4.5 kHz: where [s] and [f] have theirs
};

float sum_bands(const voice::BandLevels& b, std::size_t from, std::size_t to) {
    double sum = 0;
    for (std::size_t k = from; k < to; ++k)
        sum += std::pow(10.0, b[k] / 10);
    return static_cast<float>(power_level(sum).value());
}

Colour colour_of(const voice::BandLevels& b) {
    return {sum_bands(b, 1, 3), sum_bands(b, 2, 6), sum_bands(b, 7, 10)};
}

struct Gap {
    std::size_t begin, end;
    bool before_singing, after_singing;
};

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

struct Event {
    std::size_t begin, end;
    double score; ///< over 0: more likely a breath than not
    double over_quiet, hiss, rise, low;
};

/// The stretch around `top` in which the core band stays within `depth` dB of it.
Event around(std::span<const Colour> c, std::size_t top, double floor) {
    const double depth = std::clamp((c[top].core - floor) * 0.6, 5.0, 14.0);
    std::size_t a = top, b = top + 1;
    while (a > 0 && c[a - 1].core > c[top].core - depth)
        --a;
    while (b < c.size() && c[b].core > c[top].core - depth)
        ++b;
    return {a, b, 0, 0, 0, 0, 0};
}

/// Looks for the most breath-like event of a gap.
std::vector<Event> events_in(std::span<const Colour> c, double floor, const Gap& gap) {
    std::vector<Event> events;
    std::vector<float> core;
    for (const Colour& x : c)
        core.push_back(x.core);
    const auto smooth = signal::running_mean(core, 2);
    for (std::size_t i = 1; i + 1 < c.size(); ++i) {
        if (smooth[i] < smooth[i - 1] || smooth[i] < smooth[i + 1] || smooth[i] < floor + 5) continue;
        Event e = around(c, i, floor);
        if (!events.empty() && e.begin < events.back().end) continue;
        if (e.end - e.begin < kShortest || e.end - e.begin > kLongest) continue;
        const auto part = c.subspan(e.begin, e.end - e.begin);
        std::vector<float> hiss, low;
        for (const Colour& x : part) {
            hiss.push_back(x.hiss - x.core);
            low.push_back(x.low - x.core);
        }
        e.hiss = signal::median(hiss).value_or(0);
        e.low = signal::median(low).value_or(0);
        e.over_quiet = smooth[i] - floor;
        // Does it swell up, or is it what remains of the note before?
        const float start =
            *std::min_element(smooth.begin() + static_cast<std::ptrdiff_t>(e.begin > 6 ? e.begin - 6 : 0),
                              smooth.begin() + static_cast<std::ptrdiff_t>(i) + 1);
        e.rise = smooth[i] - start;
        const double length = static_cast<double>(e.end - e.begin) * kHop.value();
        // Votes in units of 'clearly so'; constants tuned on the project's singer (tests/singer).
        e.score = std::min((e.over_quiet - 7) / 5, 2.0) - std::max(0.0, (e.hiss + 2) / 4) +
                  std::clamp((e.rise - 4) / 3, -2.0, 1.0) + std::min((length - 0.12) / 0.1, 0.5) -
                  std::max(0.0, (e.low - 1.5) / 3);
        if (gap.before_singing) {
            const double until_note = static_cast<double>(c.size() - e.end) * kHop.value();
            e.score += until_note < 0.45 ? 0.8 : -std::min((until_note - 0.45) / 0.5, 2.0);
        } else {
            e.score -= 0.5;
        }
        events.push_back(e);
    }
    return events;
}

Breath heard(const Event& e, std::size_t offset, double voice_level, double event_level) {
    Breath b;
    b.span = {time_of({static_cast<std::int64_t>(offset + e.begin)}),
              time_of({static_cast<std::int64_t>(offset + e.end)})};
    b.evidence_kind = BreathEvidence::heard;
    b.below_voice = Decibels(voice_level - event_level);
    b.confidence = {std::clamp(signal::logistic(e.score), 0.05, 0.97)};
    b.evidence = "breath noise " + fixed(e.over_quiet, 0) + " dB over the quiet around it and " +
                 fixed(voice_level - event_level, 0) + " dB under the singing, " +
                 fixed(b.span.length().value(), 2) + " s";
    return b;
}

Breath inferred(const Gap& gap) {
    const auto length = static_cast<double>(gap.end - gap.begin) * kHop.value();
    const double breath = std::clamp(0.6 * length, 0.15, 0.45);
    const double end = static_cast<double>(gap.end) * kHop.value() - std::min(0.12, 0.2 * length);
    Breath b;
    b.span = {Seconds(end - breath), Seconds(end)};
    b.evidence_kind = BreathEvidence::inferred;
    b.confidence = {std::clamp(0.35 + 0.4 * std::min(length, 1.0), 0.3, 0.75)};
    b.evidence =
        "a gap of " + fixed(length, 2) + " s in the singing; the accompaniment covers the breath itself";
    return b;
}

} // namespace

std::vector<Breath> find_breaths(const voice::Hearing& hearing, const std::vector<Run>& runs) {
    std::vector<Breath> found;
    const auto bands = hearing.texture.bands();
    std::vector<Colour> colours;
    std::vector<float> core;
    for (const auto& b : bands) {
        colours.push_back(colour_of(b));
        core.push_back(colours.back().core);
    }
    std::vector<float> voice;
    for (const Run& r : runs)
        voice.insert(voice.end(), core.begin() + static_cast<std::ptrdiff_t>(r.begin),
                     core.begin() + static_cast<std::ptrdiff_t>(r.end));
    const double voice_level = signal::median(voice).value_or(0);
    // Digital silence is quieter than any room: against it everything would be loud.
    constexpr double kQuietest = -90; // dB
    const double quietest = std::max(kQuietest, signal::quantile(core, 0.02).value_or(-100));

    for (const Gap& gap : gaps_between(runs, colours.size())) {
        // The frame of 85 ms reaches into the notes on both sides; those frames show the notes.
        const std::size_t edge = 4;
        if (gap.end < gap.begin + edge + kShortest) continue;
        const std::size_t begin = gap.after_singing ? gap.begin + edge : gap.begin;
        const std::size_t end = gap.before_singing ? gap.end - std::min<std::size_t>(2, gap.end) : gap.end;
        if (end <= begin + kShortest) continue;
        const auto part = std::span<const Colour>(colours).subspan(begin, end - begin);
        std::vector<float> here;
        for (const Colour& c : part)
            here.push_back(c.core);
        const double floor = std::max(quietest, signal::quantile(here, 0.1).value_or(-100) - 3);
        auto events = events_in(part, floor, gap);
        const auto best = std::ranges::max_element(events, {}, &Event::score);
        const bool audible = best != events.end() && best->score > 0;
        if (audible) {
            float top = -200;
            for (std::size_t i = best->begin; i < best->end; ++i)
                top = std::max(top, part[i].core);
            if (voice_level - top > 6) {
                found.push_back(heard(*best, begin, voice_level, top));
                continue;
            }
        }
        if (hearing.setting == voice::Setting::accompanied && gap.before_singing && gap.after_singing &&
            gap.end - gap.begin >= kLeastInferredGap)
            found.push_back(inferred(gap));
    }
    return found;
}

} // namespace luft::marks
