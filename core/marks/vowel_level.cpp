#include "marks/vowel_level.h"

#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

constexpr int kLeastPairs = 12;
/// Pairs of neighbours are of one line when less than this lies between them (no source).
constexpr Seconds kSameLine{0.28};
/// Weight of the pull towards 0, in squared octaves: neighbours differ by some 4 dB of their own, slopes are
/// some 3 dB, and 16 / 9 is about 2 (no source).
constexpr double kPull = 2;
constexpr double kMost = 12;

double octaves(const Note& n) {
    return std::log2(n.vowel->f1.value());
}

} // namespace

Decibels level_per_octave_of_f1(std::span<const Note> notes) {
    // Differences of neighbours: what the phrase as a whole does falls out.
    double xx = 0, xy = 0;
    int pairs = 0;
    for (std::size_t i = 1; i < notes.size(); ++i) {
        const Note &a = notes[i - 1], &b = notes[i];
        if (!a.vowel || !b.vowel || b.span.start - a.span.end > kSameLine) continue;
        const double x = octaves(b) - octaves(a), y = (b.level - a.level).value();
        xx += x * x;
        xy += x * std::clamp(y, -15.0, 15.0);
        ++pairs;
    }
    if (pairs < kLeastPairs) return Decibels(0);
    return Decibels(std::clamp(xy / (xx + kPull), 0.0, kMost));
}

void even_out_vowels(std::vector<LevelPoint>& points, std::span<const Note> notes, Decibels per_octave) {
    std::vector<double> known;
    for (const Note& n : notes)
        if (n.vowel) known.push_back(octaves(n));
    const auto usual = signal::median(known);
    if (!usual) return;
    for (LevelPoint& p : points)
        if (notes[p.note].vowel) p.level -= per_octave.value() * (octaves(notes[p.note]) - *usual);
}

} // namespace luft::marks
