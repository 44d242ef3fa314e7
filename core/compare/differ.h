// The parts that find_differences is made of, one a kind; each adds what it finds.
#pragma once

#include "compare/differences.h"
#include "compare/ear_errors.h"

namespace luft::compare {

/// All that a part needs.
struct Both {
    const Side &a, &b;
    const Alignment& alignment;
    const Counterparts& pairs;
    const Wording& wording;
    EarErrors error;     ///< of a difference between the two
    ColourErrors colour; ///< the same of vowel, closure and ring

    [[nodiscard]] const marks::Note& note_a(const NotePair& p) const { return a.notes.at(p.a); }
    [[nodiscard]] const marks::Note& note_b(const NotePair& p) const { return b.notes.at(p.b); }
};

using Found = std::vector<Difference>;

void whole_differences(const Both& both, Found& found);
void breath_differences(const Both& both, Found& found);
void phrase_differences(const Both& both, Found& found);
void register_differences(const Both& both, Found& found);
void edge_differences(const Both& both, Found& found);
void vibrato_differences(const Both& both, Found& found);
void intonation_differences(const Both& both, Found& found);
void note_manner_differences(const Both& both, Found& found);
void colour_differences(const Both& both, Found& found);
void level_differences(const Both& both, Found& found);
void tempo_differences(const Both& both, Found& found);
void note_differences(const Both& both, Found& found);

/// A note is compared only when both hearings of it are this sure: "about seven in ten" and more are right.
inline constexpr Confidence kSureNote{0.7};
/// Neither shorter than a pause of a breath nor as short as a consonant's; own value, between the sample's
/// longest consonant (0.12 s) and the shortest breath of tests/scenes (0.28 s).
inline constexpr Seconds kPause{0.18};

[[nodiscard]] bool sure(const Both& both, const NotePair& pair);
[[nodiscard]] Confidence of_both(const Both& both, const NotePair& pair);

/// Whether both hearings mean the same stretch by the pair: no other note begins inside of either's. Where
/// two notes were taken for one, neither its pitch nor its level says anything about the singer.
[[nodiscard]] bool cut_alike(const Both& both, const NotePair& pair);

/// An octave or two apart is what an ear slips by, and is never told.
[[nodiscard]] bool by_octaves(Cents apart);

/// Pairs whose notes lie in the phrases of one pair of phrases.
std::vector<NotePair> pairs_in(const Both& both, const PhrasePair& phrases);

/// First phrase's start to last phrase's end.
Span whole_of(const std::vector<std::size_t>& phrases, const std::vector<marks::Phrase>& all);

/// Whether somebody sings through all of the time, with no pause of kPause; going by the pitch curve.
bool sings_on(const Side& side, Span time);

/// A mark's confidence as a difference's: never surer than the ear was ever measured to be of breaths.
struct Surely {
    double chance = 0; ///< that it is nothing but the ear's error
    Confidence confidence;
};
[[nodiscard]] Surely surely(const Both& both, Confidence mark);

/// Whether the alignment is to be trusted at a time of A.
bool trusted(const Both& both, Seconds a);

} // namespace luft::compare
