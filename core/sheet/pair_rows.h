// Two performances below each other: which rows there are, and one musical time for both.
#pragma once

#include "compare/counterparts.h"
#include "compare/difference.h"
#include "profile/profile.h"

#include <array>
#include <optional>
#include <vector>

namespace luft::sheet {

/// Which of the two: A stands above B.
enum class Which { a, b };
inline constexpr std::array kBoth{Which::a, Which::b};
constexpr Which other_of(Which which) {
    return which == Which::a ? Which::b : Which::a;
}
/// 0 for A, 1 for B.
constexpr std::size_t index_of(Which which) {
    return which == Which::b;
}

/// What is drawn; everything must outlive what is made of it. The alignment and what follows from it were
/// made from the marks of these very sources (compare::side_of): its numbers count them in order of time.
struct PairSource {
    const profile::Source& a;
    const profile::Source& b;
    const compare::Alignment& alignment;
    const compare::Counterparts& counterparts;
    const std::vector<compare::Difference>& differences;
    std::vector<compare::Pair> pins = {}; ///< set by the coach

    [[nodiscard]] const profile::Source& of(Which which) const { return which == Which::a ? a : b; }
};

/// One performance's part of a row.
struct PairPart {
    bool lacking = false; ///< it has no counterpart of what the other sings here
    Span sung;            ///< its own media time; empty where nothing of it stands on this row
    std::vector<const project::Mark*> phrases, notes, breaths, switches; ///< in order of time
    std::vector<const project::SungWord*> words;
    std::optional<std::pair<double, double>> range; ///< MIDI pitches of its notes, at its own tuning
};

/// Phrases that belong together, or one that has no counterpart. A long one takes several rows.
struct PairRow {
    PairPart a, b;
    Span common;                      ///< from the first of both to the last of both, in common time
    std::vector<compare::Pair> knots; ///< rising; none where only one sings
    double pace = 1;                  ///< of A's time against B's, before the first knot and after the last
    Confidence sure{1};               ///< that they belong together: of the least sure stretch in it
    bool continued = false, goes_on = false;

    [[nodiscard]] PairPart& part(Which which) { return which == Which::a ? a : b; }
    [[nodiscard]] const PairPart& part(Which which) const { return which == Which::a ? a : b; }
    /// Common time is A's, onto which B is brought through the alignment; B's own where A doesn't sing.
    [[nodiscard]] Seconds to_common(Which which, Seconds own) const;
    [[nodiscard]] Seconds to_own(Which which, Seconds common) const;
};

/// In order of A's time; what only B sings stands before what B sings next. Long ones are cut before a note.
std::vector<PairRow> pair_rows(const PairSource& source, Seconds longest);

/// The row on which a time of one performance stands, or the nearest; none when it has no row at all. A
/// breath between two rows belongs to the second when it is taken up to kLead before it.
std::optional<std::size_t> pair_row_of(const std::vector<PairRow>& rows, Which which, Seconds own);

} // namespace luft::sheet
