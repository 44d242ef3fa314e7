// What the voices sound like: vowels, closure and ring. Two voices and two recordings differ in all of them
// throughout, so that notes and phrases are held against the median difference of all notes.
#include "base/text.h"
#include "compare/colour.h"
#include "compare/differ.h"
#include "compare/place_words.h"
#include "signal/statistics.h"

#include <cmath>
#include <cstdlib>

namespace luft::compare {
namespace {

// Own values: what a teacher would speak of.
constexpr double kLeastF1 = 4,
                 kLeastF2 = 4; // semitones; neighbouring vowels are further apart in one of them
constexpr Decibels kLeastCpp{2}, kLeastRing{4}, kLeastAll{4};
constexpr std::size_t kLeastNotes = 3, kLeastInAll = 12;
constexpr Decibels kSofter{3}; // worth a word, since louder singing is clearer and has more ring

/// B minus A of one measure, a value a pair of notes; none where either has none.
struct Measure {
    std::vector<std::optional<double>> of;
    std::optional<double> middle; ///< median of all; none of too few

    void settle() {
        std::vector<double> known;
        for (const auto& x : of)
            if (x) known.push_back(*x);
        if (known.size() >= kLeastInAll) middle = signal::median(std::span<const double>(known));
    }
};

struct Colours {
    Measure f1, f2, cpp, h1h2, ring, level;
};

Colours colours_of(const Both& both) {
    Colours out;
    const auto add = [](Measure& to, const auto& a, const auto& b) {
        to.of.push_back(a && b ? std::optional((*b - *a).value()) : std::nullopt);
    };
    for (const NotePair& p : both.pairs.notes) {
        const marks::Note &a = both.note_a(p), &b = both.note_b(p);
        const bool counts = sure(both, p) && cut_alike(both, p) && !by_octaves(p.apart);
        const auto formant = [&](Measure& to, Hertz marks::Vowel::*f) {
            to.of.push_back(counts && a.vowel && b.vowel
                                ? std::optional(12 * std::log2((*b.vowel).*f / (*a.vowel).*f))
                                : std::nullopt);
        };
        formant(out.f1, &marks::Vowel::f1), formant(out.f2, &marks::Vowel::f2);
        const Colour of_a = counts ? colour_of(both.a, a.span) : Colour{},
                     of_b = counts ? colour_of(both.b, b.span) : Colour{};
        add(out.cpp, of_a.cpp, of_b.cpp), add(out.h1h2, of_a.h1h2, of_b.h1h2),
            add(out.ring, of_a.ring, of_b.ring);
        out.level.of.push_back(counts ? std::optional((b.level - a.level).value()) : std::nullopt);
    }
    for (Measure* m : {&out.f1, &out.f2, &out.cpp, &out.h1h2, &out.ring, &out.level})
        m->settle();
    return out;
}

void vowels(const Both& both, Found& found, const Colours& colours) {
    if (!colours.f1.middle || !colours.f2.middle) return;
    const Wording& w = both.wording;
    for (std::size_t i = 0; i < both.pairs.notes.size(); ++i) {
        if (!colours.f1.of[i]) continue;
        const NotePair& p = both.pairs.notes[i];
        const double open = *colours.f1.of[i] - *colours.f1.middle,
                     front = *colours.f2.of[i] - *colours.f2.middle;
        const auto opener = beyond_error(open, both.colour.f1, kLeastF1),
                   fronter = beyond_error(front, both.colour.f2, kLeastF2);
        if (!opener && !fronter) continue;
        std::string how = opener ? open > 0 ? "more open" : "closer" : "";
        if (fronter)
            how += std::string(opener ? " and " : "") + (front > 0 ? "further forward" : "further back");
        // The one that stands out further is the size.
        const bool by_f1 =
            !fronter || (opener && std::abs(open) / both.colour.f1 > std::abs(front) / both.colour.f2);
        found.push_back({DifferenceKind::vowel,
                         both.note_a(p).span,
                         both.note_b(p).span,
                         by_f1 ? open : front,
                         Unit::semitones,
                         by_f1 ? both.colour.f1 : both.colour.f2,
                         {(by_f1 ? opener : fronter)->value * of_both(both, p).value},
                         w.b + " sings the vowel " + on_text(w, both.note_a(p).span, both.note_b(p).span) +
                             " " + how + " than " + inside(w.a) +
                             ", what the two voices differ by throughout taken out."});
    }
}

struct Mean {
    double value = 0, error = 0;
    std::size_t count = 0;
};

/// Of a phrase's notes, off the middle; as unsure as the ear is, or as its notes are unlike, the larger one.
std::optional<Mean> mean_of(const Measure& measure, const std::vector<std::size_t>& notes, double error) {
    if (!measure.middle) return std::nullopt;
    double sum = 0, squares = 0;
    std::size_t n = 0;
    for (const std::size_t i : notes)
        if (measure.of[i]) {
            const double x = *measure.of[i] - *measure.middle;
            sum += x, squares += x * x, ++n;
        }
    if (n < kLeastNotes) return std::nullopt;
    const auto count = static_cast<double>(n);
    const double mean = sum / count;
    const double spread = std::sqrt(std::max(0.0, squares - count * mean * mean) / (count - 1));
    return Mean{mean, std::max(error, spread) / std::sqrt(count), n};
}

std::string level_words(const Colours& colours, const std::vector<std::size_t>& notes) {
    const auto level = mean_of(colours.level, notes, 0);
    if (!level || std::abs(level->value) < kSofter.value()) return "";
    return ", but also " + fixed(std::abs(level->value), 0) + " dB " +
           (level->value > 0 ? "louder" : "softer");
}

void of_phrase(const Both& both, Found& found, const Colours& colours, const PhrasePair& phrases) {
    std::vector<std::size_t> notes;
    for (const NotePair& p : pairs_in(both, phrases))
        notes.push_back(
            static_cast<std::size_t>(std::ranges::find(both.pairs.notes, p) - both.pairs.notes.begin()));
    const Span a = whole_of(phrases.a, both.a.phrases), b = whole_of(phrases.b, both.b.phrases);
    const Wording& w = both.wording;
    const auto tell = [&](DifferenceKind kind, const Mean& mean, Decibels least, const std::string& how) {
        if (const auto confidence = beyond_error(mean.value, mean.error, least.value()))
            found.push_back({kind, a, b, mean.value, Unit::decibels, mean.error, *confidence,
                             w.b + " sounds " + how + " than " + inside(w.a) + " " + line_text(w, a, b) +
                                 ", against what the two are like elsewhere" + level_words(colours, notes) +
                                 "."});
    };
    const auto cpp = mean_of(colours.cpp, notes, both.colour.cpp.value()),
               h1h2 = mean_of(colours.h1h2, notes, both.colour.h1h2.value()),
               ring =
                   both.colour.ring ? mean_of(colours.ring, notes, both.colour.ring->value()) : std::nullopt;
    // Looser closure lowers the cepstral peak and raises H1-H2: both have to say so (profile/closure_hint.h).
    if (cpp && h1h2 && cpp->value * h1h2->value < 0)
        tell(DifferenceKind::closure, *cpp, kLeastCpp, cpp->value > 0 ? "clearer" : "breathier");
    if (ring)
        tell(DifferenceKind::ring, *ring, kLeastRing, ring->value > 0 ? "more ringing" : "less ringing");
}

void of_all(const Both& both, Found& found, const Colours& colours) {
    const Wording& w = both.wording;
    const auto tell = [&](DifferenceKind kind, const Measure& measure, std::optional<Decibels> error,
                          const std::string& more, const std::string& less, const std::string& unless) {
        if (!measure.middle || !error) return;
        if (const auto confidence = beyond_error(*measure.middle, error->value(), kLeastAll.value()))
            found.push_back({kind,
                             {},
                             {},
                             *measure.middle,
                             Unit::decibels,
                             error->value(),
                             *confidence,
                             w.b + " sounds " + (*measure.middle > 0 ? more : less) + " than " + inside(w.a) +
                                 " over all" + unless + "."});
    };
    // Noise in a recording lowers the cepstral peak; H1-H2 it hardly moves.
    tell(DifferenceKind::closure, colours.h1h2, both.colour.all_h1h2, "breathier or softer", "firmer",
         " (first harmonic against the second)");
    tell(DifferenceKind::ring, colours.ring, both.colour.all_ring, "more ringing", "less ringing",
         ", unless microphone or treatment make it so");
}

} // namespace

void colour_differences(const Both& both, Found& found) {
    if (!both.error.colours) return;
    const Colours colours = colours_of(both);
    vowels(both, found, colours);
    for (const PhrasePair& phrases : both.pairs.phrases)
        of_phrase(both, found, colours, phrases);
    of_all(both, found, colours);
}

} // namespace luft::compare
