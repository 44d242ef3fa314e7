#include "compare/colour.h"

#include "marks/voice_breaks.h"
#include "signal/statistics.h"

#include <algorithm>
#include <utility>

namespace luft::compare {
namespace {

std::optional<Decibels> middle_of(const Curve<Decibels>& curve, Span steady) {
    const auto values = curve.within(steady);
    const auto known = std::ranges::count_if(values, [](float v) { return !std::isnan(v); });
    if (known == 0 || 2 * known < static_cast<std::ptrdiff_t>(values.size())) return std::nullopt;
    return Decibels(signal::median(values).value());
}

} // namespace

Colour colour_of(const Side& side, Span note) {
    const Seconds skip = note.length() * 0.2;
    const Span steady{note.start + skip, note.end - skip};
    return {middle_of(side.cpp, steady), middle_of(side.h1h2, steady), middle_of(side.ring, steady)};
}

std::optional<Dip> deepest_dip(const Side& side, Span note) {
    constexpr std::size_t kNear = 4, kFar = 9; // frames, as in marks/voice_breaks.cpp
    voice::Curves curves;
    const auto copy = [&](const auto& curve) {
        const auto part = curve.within(note);
        return std::vector<float>(part.begin(), part.end());
    };
    curves.f0 = Curve<Hertz>(copy(side.f0));
    curves.level = Curve<Decibels>(copy(side.level));
    const auto level = std::as_const(curves.level).raw();
    if (level.size() != curves.f0.size() || level.size() <= 2 * kFar) return std::nullopt;
    const auto loudest = [&](std::size_t from) {
        return *std::ranges::max_element(level.subspan(from, kFar - kNear + 1));
    };
    Dip dip;
    for (std::size_t i = kFar; i + kFar < level.size(); ++i) {
        const Decibels depth(std::min(loudest(i - kFar), loudest(i + kNear)) - level[i]);
        dip.depth = std::max(dip.depth, depth);
    }
    const auto broken = marks::find_breaks(curves, 0, curves.f0.size());
    dip.broken = std::ranges::count(broken, true) > 0;
    return dip;
}

bool begins_on_pitch(const Side& side, const marks::Note& note) {
    constexpr double kOff = 0.35; // semitones
    const auto f0 = side.f0.within({note.span.start + Seconds(0.02), note.span.start + Seconds(0.15)});
    return !f0.empty() && std::ranges::all_of(f0, [&](float f) {
        return !std::isnan(f) && std::abs((pitch_of(Hertz(f)) - note.pitch).value()) < kOff;
    });
}

} // namespace luft::compare
