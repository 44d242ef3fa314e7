// Tempo: of the whole, and of a phrase against the whole.
#include "base/text.h"
#include "compare/differ.h"
#include "compare/place_words.h"
#include "signal/statistics.h"

#include <cmath>
#include <cstdlib>

namespace luft::compare {
namespace {

// Own values: what a teacher would speak of.
constexpr double kLeastWhole = 3, kLeastPhrase = 8; // percent
constexpr Seconds kLeastLength{1.5};

struct Paced {
    Span a, b;        ///< the phrases
    double speed = 1; ///< B's against A's
    double error = 0; ///< of it, as a share
};

/// From the first common note's start to the last one's.
std::optional<Paced> pace_of(const Both& both, const PhrasePair& phrases) {
    std::vector<NotePair> pairs = pairs_in(both, phrases);
    std::erase_if(pairs, [&](const NotePair& p) { return !sure(both, p); });
    if (pairs.size() < 3) return std::nullopt;
    const Seconds a = both.note_a(pairs.back()).span.start - both.note_a(pairs.front()).span.start,
                  b = both.note_b(pairs.back()).span.start - both.note_b(pairs.front()).span.start;
    if (a < kLeastLength || b < kLeastLength) return std::nullopt;
    // Each of the four starts is 1/sqrt 2 of the error of a difference off.
    return Paced{whole_of(phrases.a, both.a.phrases), whole_of(phrases.b, both.b.phrases), a / b,
                 std::hypot(both.error.start / a, both.error.start / b)};
}

} // namespace

void tempo_differences(const Both& both, Found& found) {
    std::vector<Paced> all;
    std::vector<double> speeds;
    double errors = 0;
    for (const PhrasePair& phrases : both.pairs.phrases)
        if (const auto paced = pace_of(both, phrases)) {
            all.push_back(*paced);
            speeds.push_back(paced->speed);
            errors += paced->error * paced->error;
        }
    if (all.empty()) return;
    const Wording& w = both.wording;
    const double whole = signal::median(std::span<const double>(speeds)).value();
    const double size = 100 * (whole - 1), error = 100 * std::sqrt(errors) / static_cast<double>(all.size());
    if (const auto confidence = beyond_error(size, error, kLeastWhole))
        found.push_back({DifferenceKind::tempo,
                         {},
                         {},
                         size,
                         Unit::percent,
                         error,
                         *confidence,
                         w.b + " is " + fixed(std::abs(size), 0) + " % " + (size > 0 ? "faster" : "slower") +
                             " than " + inside(w.a) + "."});
    if (all.size() < 3) return; // of two, either might be the whole
    for (const Paced& phrase : all) {
        const double against = 100 * (phrase.speed / whole - 1), unsure = 100 * phrase.error;
        if (const auto confidence = beyond_error(against, unsure, kLeastPhrase))
            found.push_back({DifferenceKind::phrase_tempo, phrase.a, phrase.b, against, Unit::percent, unsure,
                             *confidence,
                             w.b + (against > 0 ? " presses on" : " takes time") + " " +
                                 line_text(w, phrase.a, phrase.b) + ": " + fixed(std::abs(against), 0) +
                                 " % " + (against > 0 ? "faster" : "slower") + " than " + inside(w.a) +
                                 ", the tempo of the whole taken out."});
    }
}

} // namespace luft::compare
