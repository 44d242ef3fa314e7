#include "marks/edges.h"

#include "base/text.h"
#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

constexpr int kFine = voice::kFinePerFrame;
constexpr std::size_t kJoined = 5; // frames of silence under which a note is joined to its neighbour

std::span<const float> slice(std::span<const float> all, std::ptrdiff_t from, std::ptrdiff_t to) {
    const auto n = static_cast<std::ptrdiff_t>(all.size());
    from = std::clamp<std::ptrdiff_t>(from, 0, n);
    to = std::clamp<std::ptrdiff_t>(to, from, n);
    return all.subspan(static_cast<std::size_t>(from), static_cast<std::size_t>(to - from));
}

float median_of(std::span<const float> values, float otherwise) {
    return static_cast<float>(signal::median(values).value_or(otherwise));
}

std::string ms(Seconds t) {
    return fixed(t.value() * 1000, 0) + " ms";
}

} // namespace

std::optional<StartMeasures> measure_start(const voice::Texture& texture, const Run& note,
                                           std::size_t silent_before) {
    const auto begin = static_cast<std::ptrdiff_t>(note.begin) * kFine;
    const auto length = static_cast<std::ptrdiff_t>(note.length()) * kFine;
    if (length < 8 * kFine) return std::nullopt;
    const float steady =
        median_of(slice(texture.low(), begin + std::min<std::ptrdiff_t>(6 * kFine, length / 2),
                        begin + std::min<std::ptrdiff_t>(20 * kFine, length)),
                  -90);
    // Ripple of single glottal pulses is taken out by the largest of three neighbours (7.5 ms).
    const auto low = [&](std::ptrdiff_t i) {
        const auto around = slice(texture.low(), i - 1, i + 2);
        return around.empty() ? -120.0F : *std::ranges::max_element(around);
    };
    const auto earliest =
        begin - static_cast<std::ptrdiff_t>(std::min<std::size_t>(silent_before, 20)) * kFine;
    std::ptrdiff_t stands = std::max<std::ptrdiff_t>(earliest, 0);
    while (stands < begin + length && low(stands) < steady - 1.5F)
        ++stands;
    std::ptrdiff_t starts = stands;
    while (starts > earliest && starts > 0 && low(starts - 1) > steady - 20)
        --starts;

    // Digital silence is quieter than any room: against it everything would be loud air.
    constexpr double kQuietest = -90;
    const float quiet = static_cast<float>(std::max(
        kQuietest,
        signal::quantile(slice(texture.high(), begin - 60 * kFine, begin + length), 0.05).value_or(-100)));
    const float high_steady = median_of(
        slice(texture.high(), begin + 4 * kFine, begin + std::min(20 * std::ptrdiff_t{kFine}, length)), -100);
    const auto air = slice(texture.high(), starts - 3 * kFine, starts);
    const float high_before = median_of(air, quiet);
    const float before = median_of(slice(texture.full(), starts - 3 * kFine - 2, starts - 2), -120);
    StartMeasures m;
    m.begins = voice::kFineHop * static_cast<double>(starts);
    m.rise = voice::kFineHop * static_cast<double>(stands - starts + 1);
    m.noise_before = Decibels(high_before - quiet);
    m.noise_share = Decibels(high_before - high_steady);
    m.gap = Decibels(steady - before);
    float lowest = steady;
    for (auto i = std::max<std::ptrdiff_t>(begin - 6 * kFine, 0); i < begin + 3 * kFine; ++i)
        lowest = std::min(lowest, low(i));
    m.dip = Decibels(steady - lowest);
    return m;
}

namespace {

/// Instruments make attacks, air and tails of their own: what is read there counts less than an even chance.
template <class Edge>
Edge among_instruments(Edge edge) {
    constexpr Confidence kMost{0.45};
    if (edge.confidence > kMost) {
        edge.confidence = kMost;
        edge.evidence += "; the accompaniment sounds there too";
    }
    return edge;
}

/// How much lower a curve is in the first 50 ms than from 0.2 s on, in dB; `otherwise` where it isn't known.
double start_against_rest(const Curve<Decibels>& curve, Seconds begins, const Run& note, double otherwise) {
    const auto start = static_cast<std::ptrdiff_t>(std::max(0.0, std::floor(begins / kHop)));
    const auto end = static_cast<std::ptrdiff_t>(note.end) - 2;
    const auto first = signal::median(slice(curve.raw(), start + 1, start + 6));
    const auto rest = signal::median(slice(curve.raw(), std::min(start + 20, end), end));
    return first && rest ? *rest - *first : otherwise;
}

struct OnsetVotes {
    double breathy, glottal; ///< over 0 = for it, in units of 'clearly so'
};

OnsetVotes weigh_onset(const voice::Hearing& hearing, const Run& note, std::size_t silent_before,
                       const StartMeasures& m) {
    const double rise = m.rise.value() * 1000, air = m.noise_before.value();
    const double irregular = start_against_rest(hearing.curves.hnr, m.begins, note, 9);
    const double unclear = start_against_rest(hearing.curves.cpp, m.begins, note, 0);
    // Aspiration takes time: what sounds in a shorter gap is the room's answer to the note before.
    const double too_short = std::clamp((10 - static_cast<double>(silent_before)) / 3, 0.0, 2.5);
    OnsetVotes v{};
    v.breathy = std::clamp((m.noise_share.value() + 14) / 6, -2.0, 1.5) +
                std::clamp((air - 8) / 6, -2.0, 1.5) + std::clamp((26 - m.gap.value()) / 10, -1.5, 1.0) +
                std::clamp((rise - 45) / 40, -1.5, 1.0) + std::clamp((unclear - 3) / 3, -1.0, 1.0) -
                too_short;
    v.glottal = std::clamp((24 - rise) / 8, -3.0, 2.0) + std::clamp((irregular - 10) / 4, -1.5, 1.5) +
                std::clamp((4 - air) / 6, -2.0, 0.3);
    return v;
}

Onset onset_alone(const voice::Hearing& hearing, const Run& note, std::size_t silent_before) {
    const auto m = measure_start(hearing.texture, note, std::max(silent_before, kJoined));
    if (silent_before < kJoined && (!m || m->dip < Decibels(12)))
        return {OnsetKind::balanced, {0.4}, "joined to the note before it; no start of its own to judge"};
    if (!m) return {OnsetKind::balanced, {0.3}, "too short to judge how it starts"};
    const auto [breathy, glottal] = weigh_onset(hearing, note, silent_before, *m);
    const std::string words = "rises in " + ms(m->rise);
    if (breathy > 0.3 && breathy > glottal) {
        const double most = m->rise < Seconds(0.03) ? 0.5 : 0.9;
        return {OnsetKind::breathy,
                {std::clamp(0.35 + 0.16 * breathy, 0.4, most)},
                words + ", air before the tone " + fixed(m->noise_before.value(), 0) + " dB over the quiet"};
    }
    if (glottal > 0)
        return {OnsetKind::glottal,
                {std::clamp(0.75 + 0.07 * glottal, 0.75, 0.95)},
                words + ", no air before the tone"};
    return {OnsetKind::balanced, {std::clamp(0.25 - 0.25 * std::max(breathy, glottal), 0.25, 0.95)}, words};
}

Offset offset_alone(const voice::Hearing& hearing, const Run& note, std::size_t silent_after) {
    const auto& texture = hearing.texture;
    if (silent_after < kJoined) return {OffsetKind::clean, {0.4}, "runs into the next note"};
    const auto begin = static_cast<std::ptrdiff_t>(note.begin) * kFine;
    const auto end = static_cast<std::ptrdiff_t>(note.end) * kFine;
    const auto latest = end + static_cast<std::ptrdiff_t>(std::min<std::size_t>(silent_after, 40)) * kFine;
    const float steady = median_of(
        slice(texture.low(), std::max(begin, end - 60 * kFine), std::max(begin + 1, end - 15 * kFine)), -90);
    std::ptrdiff_t leaves = end;
    while (leaves > begin && texture.low()[static_cast<std::size_t>(leaves - 1)] < steady - 3)
        --leaves;
    std::ptrdiff_t gone = leaves;
    const auto n = static_cast<std::ptrdiff_t>(texture.low().size());
    while (gone < std::min(latest, n) && texture.low()[static_cast<std::size_t>(gone)] > steady - 20)
        ++gone;
    const Seconds fall = voice::kFineHop * static_cast<double>(gone - leaves);

    const float quiet = static_cast<float>(
        signal::quantile(slice(texture.high(), begin, latest + 20 * kFine), 0.05).value_or(-100));
    const float high_steady =
        median_of(slice(texture.high(), std::max(begin, end - 40 * kFine), leaves), -100);
    const float high_after = median_of(slice(texture.high(), gone, gone + 8 * kFine), quiet);
    const double air = high_after - quiet, share = high_after - high_steady;
    const std::string words = "falls in " + ms(fall);
    if (air > 8 && share > -14)
        return {OffsetKind::breathy,
                {std::clamp(0.75 + (air - 8) / 80, 0.75, 0.95)},
                words + ", air after the tone " + fixed(air, 0) + " dB over the quiet"};
    if (fall > Seconds(0.16))
        return {OffsetKind::trailing, {std::clamp(0.75 + (fall.value() - 0.16), 0.75, 0.95)}, words};
    return {OffsetKind::clean, {std::clamp(0.9 - fall.value() * 2, 0.5, 0.9)}, words};
}

} // namespace

Onset judge_onset(const voice::Hearing& hearing, const Run& note, std::size_t silent_before) {
    const Onset onset = onset_alone(hearing, note, silent_before);
    return hearing.setting == voice::Setting::alone ? onset : among_instruments(onset);
}

Offset judge_offset(const voice::Hearing& hearing, const Run& note, std::size_t silent_after) {
    const Offset offset = offset_alone(hearing, note, silent_after);
    return hearing.setting == voice::Setting::alone ? offset : among_instruments(offset);
}

} // namespace luft::marks
