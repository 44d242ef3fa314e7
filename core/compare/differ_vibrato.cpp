// Vibrato: whether, how fast, how wide.
#include "base/text.h"
#include "compare/differ.h"
#include "compare/place_words.h"
#include "signal/statistics.h"

#include <cmath>
#include <cstdlib>

namespace luft::compare {
namespace {

// Own values: what a teacher would speak of.
constexpr Hertz kLeastRate{0.4};
constexpr Cents kLeastExtent{20};
constexpr Cents kStraight{
    15}; // a note that swings more isn't held straight; own value, seen on seeds 991 to 996
constexpr Seconds kLongEnough{0.5}; // three cycles of a slow vibrato
constexpr Seconds kSettled{0.15};   // an onset's glide is no swing

/// How far the pitch swings about its own straight line, as the extent of a vibrato of the same spread; none
/// where the note is too short or broken.
std::optional<Cents> swing(const Side& side, Span note) {
    const Span steady{note.start + kSettled, note.end - kSettled / 2};
    if (steady.length() < kLongEnough) return std::nullopt;
    std::vector<float> cents;
    int missing = 0;
    for (const float f : side.f0.within(steady)) {
        cents.push_back(std::isnan(f) ? f : 1200 * std::log2(f / 440));
        missing += std::isnan(f);
    }
    const auto line = signal::fit_line(cents);
    if (!line || missing * 10 > static_cast<int>(cents.size())) return std::nullopt;
    double sum = 0;
    for (std::size_t i = 0; i < cents.size(); ++i)
        if (!std::isnan(cents[i]))
            sum += std::pow(cents[i] - line->intercept - line->slope * static_cast<double>(i), 2);
    return Cents(std::sqrt(2 * sum / static_cast<double>(cents.size())));
}

void one_only(const Both& both, Found& found, const NotePair& p, int& more, int& less) {
    const marks::Note &a = both.note_a(p), &b = both.note_b(p);
    const auto straight = b.vibrato ? swing(both.a, a.span) : swing(both.b, b.span);
    if (!straight || *straight > kStraight) return;
    const Cents extent = b.vibrato ? b.vibrato->extent : a.vibrato->extent;
    const double size = (extent - *straight).value();
    const auto confidence =
        size > 0 ? beyond_error(size, both.error.vibrato_extent.value(), kLeastExtent.value()) : std::nullopt;
    if (!confidence) return;
    ++(b.vibrato ? more : less);
    const Wording& w = both.wording;
    const std::string where = on_text(w, a.span, b.span);
    found.push_back({DifferenceKind::vibrato,
                     a.span,
                     b.span,
                     b.vibrato ? size : -size,
                     Unit::cents,
                     both.error.vibrato_extent.value(),
                     {confidence->value * of_both(both, p).value},
                     b.vibrato
                         ? w.b + " lets the voice swing " + where + " (" + fixed(extent.value(), 0) +
                               " cents to each side), " + inside(w.a) + " holds it straight."
                         : w.b + " holds the note " + where + " straight, " + inside(w.a) +
                               " lets it swing (" + fixed(extent.value(), 0) + " cents to each side)."});
}

void both_swing(const Both& both, Found& found, const NotePair& p) {
    const marks::Note &a = both.note_a(p), &b = both.note_b(p);
    const Wording& w = both.wording;
    const double faster = (b.vibrato->rate - a.vibrato->rate).value();
    const double wider = (b.vibrato->extent - a.vibrato->extent).value();
    const auto tell = [&](DifferenceKind kind, double size, Unit unit, double error, double least,
                          const std::string& how) {
        if (const auto confidence = beyond_error(size, error, least))
            found.push_back({kind,
                             a.span,
                             b.span,
                             size,
                             unit,
                             error,
                             {confidence->value * of_both(both, p).value},
                             w.b + "'s vibrato " + on_text(w, a.span, b.span) + " is " + how + " than " +
                                 (w.a == "The first" ? "the first's" : w.a + "'s") + "."});
    };
    tell(DifferenceKind::vibrato_rate, faster, Unit::hertz, both.error.vibrato_rate.value(),
         kLeastRate.value(), fixed(std::abs(faster), 1) + " Hz " + (faster > 0 ? "faster" : "slower"));
    tell(DifferenceKind::vibrato_extent, wider, Unit::cents, both.error.vibrato_extent.value(),
         kLeastExtent.value(), fixed(std::abs(wider), 0) + " cents " + (wider > 0 ? "wider" : "narrower"));
}

} // namespace

void vibrato_differences(const Both& both, Found& found) {
    int more = 0, less = 0;
    for (const NotePair& p : both.pairs.notes) {
        if (!sure(both, p)) continue;
        const bool in_a = both.note_a(p).vibrato.has_value(), in_b = both.note_b(p).vibrato.has_value();
        if (in_a && in_b)
            both_swing(both, found, p);
        else if (in_a || in_b)
            one_only(both, found, p, more, less);
    }
    const double chance = sign_test(more, less);
    if (chance < kByChance)
        found.push_back({DifferenceKind::vibrato,
                         {},
                         {},
                         static_cast<double>(more - less),
                         Unit::times,
                         chance,
                         {1 - chance},
                         both.wording.b + " sings with vibrato " + (more > less ? "more" : "less") +
                             " often than " + inside(both.wording.a) + " on the same notes."});
}

} // namespace luft::compare
