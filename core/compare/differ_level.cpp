// How phrases and held notes rise and fade.
#include "base/text.h"
#include "compare/differ.h"
#include "compare/place_words.h"
#include "signal/statistics.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace luft::compare {
namespace {

// Own values: what a teacher would speak of.
constexpr Decibels kLeastPhrase{4}, kLeastNote{10};
constexpr Decibels kMost{
    12}; // more is rather a breath that the ear took into the note; common practice, no source
constexpr Seconds kHeld{0.7};
constexpr std::size_t kLeastNotes = 4;

/// Line through the difference of levels against the place in the phrase, 0 to 1. Each performance's own
/// median level changes the line's height and not its slope.
struct Slope {
    double rise = 0, error = 0;
};

std::optional<Slope> slope_of(const Both& both, const std::vector<NotePair>& pairs, Span a) {
    double n = 0, sx = 0, sy = 0, sxx = 0, sxy = 0, syy = 0;
    for (const NotePair& p : pairs) {
        if (!sure(both, p)) continue;
        const double x = (both.note_a(p).span.middle() - a.start) / a.length();
        const double y = (both.note_b(p).level - both.note_a(p).level).value();
        n += 1, sx += x, sy += y, sxx += x * x, sxy += x * y, syy += y * y;
    }
    const double spread = sxx - sx * sx / n;
    if (n < static_cast<double>(kLeastNotes) || spread <= 0.01) return std::nullopt;
    const double rise = (sxy - sx * sy / n) / spread;
    const double left = std::max(0.0, syy - sy * sy / n - rise * rise * spread);
    // Notes that don't lie on the line make it as unsure as the ear's error does.
    const double note = std::max(both.error.level.value(), std::sqrt(left / (n - 2)));
    return Slope{rise, note / std::sqrt(spread)};
}

constexpr std::size_t kLeastInRange = 12; // notes
constexpr Decibels kLeastRange{3};        // own value

/// From soft to loud: 10th to 90th percentile of the notes that both sing.
void whole_range(const Both& both, Found& found) {
    std::vector<double> a, b;
    for (const NotePair& p : both.pairs.notes)
        if (sure(both, p) && cut_alike(both, p)) {
            a.push_back(both.note_a(p).level.value());
            b.push_back(both.note_b(p).level.value());
        }
    if (a.size() < kLeastInRange) return;
    const auto range = [](const std::vector<double>& levels) {
        const std::span<const double> all(levels);
        return signal::quantile(all, 0.9).value() - signal::quantile(all, 0.1).value();
    };
    const double of_a = range(a), of_b = range(b), size = of_b - of_a, error = both.error.level_range.value();
    if (const auto confidence = beyond_error(size, error, kLeastRange.value()))
        found.push_back({DifferenceKind::level_range,
                         {},
                         {},
                         size,
                         Unit::decibels,
                         error,
                         *confidence,
                         both.wording.b + " goes through " + fixed(of_b, 0) + " dB from soft to loud, " +
                             inside(both.wording.a) + " through " + fixed(of_a, 0) +
                             " dB on the same notes."});
}

std::string change_text(double db) {
    return std::abs(db) < 1
               ? std::string("keeps its level")
               : std::string(db > 0 ? "grows by " : "fades by ") + fixed(std::abs(db), 0) + " dB";
}

} // namespace

void level_differences(const Both& both, Found& found) {
    const Wording& w = both.wording;
    whole_range(both, found);
    for (const PhrasePair& phrases : both.pairs.phrases) {
        const Span a = whole_of(phrases.a, both.a.phrases), b = whole_of(phrases.b, both.b.phrases);
        const auto slope = slope_of(both, pairs_in(both, phrases), a);
        if (!slope) continue;
        if (const auto confidence = beyond_error(slope->rise, slope->error, kLeastPhrase.value()))
            found.push_back(
                {DifferenceKind::level_shape, a, b, slope->rise, Unit::decibels, slope->error, *confidence,
                 w.b + (slope->rise > 0 ? " grows " : " fades ") + fixed(std::abs(slope->rise), 0) +
                     " dB more than " + inside(w.a) + " " + line_text(w, a, b) + "."});
    }
    for (const NotePair& p : both.pairs.notes) {
        const marks::Note &a = both.note_a(p), &b = both.note_b(p);
        if (!sure(both, p) || a.span.length() < kHeld || b.span.length() < kHeld || !cut_alike(both, p))
            continue;
        if (std::max(std::abs(a.level_change.value()), std::abs(b.level_change.value())) > kMost.value())
            continue;
        const double size = (b.level_change - a.level_change).value();
        const double error = both.error.level_change.value();
        if (const auto confidence = beyond_error(size, error, kLeastNote.value()))
            found.push_back({DifferenceKind::note_level,
                             a.span,
                             b.span,
                             size,
                             Unit::decibels,
                             error,
                             {confidence->value * of_both(both, p).value},
                             w.b + " " + change_text(b.level_change.value()) + " " +
                                 on_text(w, a.span, b.span) + ", " + inside(w.a) + " " +
                                 change_text(a.level_change.value()) + "."});
    }
}

} // namespace luft::compare
