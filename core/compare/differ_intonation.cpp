// Notes and phrases sung higher or lower, each against its own tuning.
#include "base/text.h"
#include "compare/differ.h"
#include "compare/place_words.h"

#include <cmath>
#include <cstdlib>

namespace luft::compare {
namespace {

// Own values: what a teacher would speak of, and from where on it is another note.
constexpr Cents kLeastNote{15}, kLeastPhrase{10}, kAnotherNote{75};
constexpr std::size_t kLeastNotes = 3;
/// Under instruments, 1 in 100 of the pairs given 0.7 lay a semitone and more apart by error ([errors]).
constexpr Confidence kSureOfNote{0.8};

std::string apart_text(double cents) {
    return fixed(std::abs(cents), 0) + " cents " + (cents > 0 ? "higher" : "lower");
}

void another_note(const Both& both, Found& found, const NotePair& p) {
    const double semitones = p.apart.value() / 100;
    const marks::Note &a = both.note_a(p), &b = both.note_b(p);
    const Confidence confidence{a.confidence.value * b.confidence.value};
    if (of_both(both, p) < kSureOfNote) return;
    found.push_back({DifferenceKind::other_note, a.span, b.span, semitones, Unit::semitones,
                     both.error.pitch.value() / 100, confidence,
                     both.wording.b + " sings " + note_name(b.pitch) + " " +
                         on_text(both.wording, a.span, b.span) + ", " + fixed(std::abs(semitones), 0) +
                         (std::abs(semitones) < 1.5 ? " semitone " : " semitones ") +
                         (semitones > 0 ? "higher" : "lower") + " than the tune of " +
                         inside(both.wording.a) + "."});
}

} // namespace

void intonation_differences(const Both& both, Found& found) {
    const Wording& w = both.wording;
    std::vector<std::optional<Confidence>> told(both.pairs.notes.size());
    for (std::size_t i = 0; i < both.pairs.notes.size(); ++i) {
        const NotePair& p = both.pairs.notes[i];
        if (!sure(both, p) || by_octaves(p.apart) || !cut_alike(both, p)) continue;
        if (std::abs(p.apart.value()) >= kAnotherNote.value()) {
            another_note(both, found, p);
            continue;
        }
        told[i] = beyond_error(p.apart.value(), both.error.pitch.value(), kLeastNote.value());
        if (!told[i]) continue;
        const marks::Note &a = both.note_a(p), &b = both.note_b(p);
        found.push_back({DifferenceKind::note_intonation,
                         a.span,
                         b.span,
                         p.apart.value(),
                         Unit::cents,
                         both.error.pitch.value(),
                         {told[i]->value * of_both(both, p).value},
                         w.b + " sings the note " + on_text(w, a.span, b.span) + " " +
                             apart_text(p.apart.value()) + " than " + inside(w.a) +
                             ", each against its own tuning."});
    }
    for (const PhrasePair& phrases : both.pairs.phrases) {
        double sum = 0;
        std::size_t count = 0;
        for (const NotePair& p : pairs_in(both, phrases)) {
            const auto i =
                static_cast<std::size_t>(std::ranges::find(both.pairs.notes, p) - both.pairs.notes.begin());
            if (told[i] || !sure(both, p) || std::abs(p.apart.value()) >= kAnotherNote.value()) continue;
            sum += p.apart.value();
            ++count;
        }
        if (count < kLeastNotes) continue;
        const double mean = sum / static_cast<double>(count);
        const double error = std::hypot(both.error.pitch.value() / std::sqrt(static_cast<double>(count)),
                                        both.error.tuning.value());
        const Span a = whole_of(phrases.a, both.a.phrases), b = whole_of(phrases.b, both.b.phrases);
        if (const auto confidence = beyond_error(mean, error, kLeastPhrase.value()))
            found.push_back({DifferenceKind::phrase_intonation, a, b, mean, Unit::cents, error, *confidence,
                             w.b + " lies " + apart_text(mean) + " on average than " + inside(w.a) + " " +
                                 line_text(w, a, b) + ", each against its own tuning."});
    }
}

} // namespace luft::compare
