#include "marks/phrase_levels.h"

#include "marks/level_path.h"
#include "marks/vowel_level.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

constexpr double kHeard = 4;             // dB between the ends
constexpr double kSwell = 0.75 * kHeard; // dB over both ends
constexpr Seconds kShortest{1.2};
// Over what notes heard are out by (tests/marks/phrase_levels_test.cpp, figures): accompanied, the softest
// notes aren't heard at all.
constexpr Decibels kErrorAlone{1.0};
constexpr Decibels kErrorAccompanied{2.0};

/// Chance that a normal value of this many standard deviations over 0 is over 0 in truth.
double chance(double deviations) {
    return 0.5 * std::erfc(-deviations / std::sqrt(2.0));
}

double length_of(const std::vector<LevelPoint>& points) {
    double sum = 0;
    for (const LevelPoint& p : points)
        sum += p.weight;
    return sum;
}

} // namespace

std::span<const Note> notes_within(const std::vector<Note>& notes, Span span) {
    const auto middle = [](const Note& n) { return n.span.middle(); };
    const auto first = std::ranges::lower_bound(notes, span.start, {}, middle);
    return {first, std::ranges::lower_bound(first, notes.end(), span.end, {}, middle)};
}

std::optional<PhraseLevel> phrase_level(std::span<const Note> notes, const Curve<Decibels>& level,
                                        Decibels per_octave, Decibels note_error) {
    if (notes.empty() || notes.back().span.end - notes.front().span.start < kShortest) return std::nullopt;
    auto points = level_points(level, notes);
    if (points.size() < 5 || length_of(points) < 0.5 * kShortest.value()) return std::nullopt;
    even_out_vowels(points, notes, per_octave);
    const SmoothPath path = smooth_path(points);

    const auto top = std::ranges::max_element(path.level);
    const double first = path.level.front(), last = path.level.back();
    PhraseLevel out;
    out.change = Decibels(last - first);
    out.rise = Decibels(*top - std::max(first, last));
    const double change = out.change.value(), rise = out.rise.value();

    const auto n = static_cast<double>(std::max<std::size_t>(notes.size(), 3));
    const double off = std::hypot(path.scatter, note_error.value());
    const double unsure = off * std::sqrt(8 / n);
    const double changes = (std::abs(change) - kHeard) / unsure, swells = (rise - kSwell) / unsure;
    if (swells > 0) {
        out.shape = LevelShape::swelling;
        out.confidence = {chance(swells)};
    } else if (changes > 0) {
        out.shape = change > 0 ? LevelShape::growing : LevelShape::fading;
        out.confidence = {chance(std::min(changes, -swells))};
    } else {
        out.shape = path.scatter > kHeard ? LevelShape::fluctuating : LevelShape::steady;
        out.confidence = {chance(std::min(-changes, -swells))};
    }
    if (out.shape == LevelShape::growing || out.shape == LevelShape::fading ||
        out.shape == LevelShape::swelling) {
        const auto k = static_cast<double>(top - path.level.begin()) / (kPathSteps - 1);
        const Span whole{notes.front().span.start, notes.back().span.end};
        out.peak_at = (path.span.start + path.span.length() * k - whole.start) / whole.length();
    }
    return out;
}

void measure_phrase_levels(std::vector<Phrase>& phrases, const std::vector<Note>& notes,
                           const Curve<Decibels>& level, voice::Setting setting) {
    const Decibels vowels = level_per_octave_of_f1(notes);
    for (Phrase& p : phrases)
        p.level = phrase_level(notes_within(notes, p.span), level, vowels,
                               setting == voice::Setting::alone ? kErrorAlone : kErrorAccompanied);
}

} // namespace luft::marks
