// Two performances on one musical time.
#pragma once

#include "compare/side.h"

#include <optional>
#include <vector>

namespace luft::compare {

/// A pair of moments at which both performances are at the same place of the piece.
struct Pair {
    Seconds a, b;
    bool operator==(const Pair&) const = default;
};

/// Some seconds of both that belong together. Stretches that follow each other without a gap meet.
struct Stretch {
    std::vector<Pair> knots; ///< at least two, rising on both sides; straight lines between them
    double unlikeness = 0;   ///< mean over the stretch, 0 to 1; see columns.h
    double unevenness = 0;   ///< standard deviation of log tempo from knot to knot, weighted by length
    double met = 1;          ///< share of both sides' notes that begin at a knot; 1 where nobody sings
    Confidence confidence;   ///< that a note of it is within 0.3 s of its true counterpart; see trust.h

    [[nodiscard]] Span a() const { return {knots.front().a, knots.back().a}; }
    [[nodiscard]] Span b() const { return {knots.front().b, knots.back().b}; }
};

/// A stretch that the other performance doesn't have: cut there, repeated or added here, an introduction.
struct Alone {
    Span span;
    bool sung = false;              ///< somebody sings in a fifth of it or more
    std::optional<Span> again = {}; ///< where the other performance sings the same: here it is sung once more
};

struct Alignment {
    int semitones = 0;              ///< B's key minus A's, each against its own tuning; octaves included
    Cents tuning;                   ///< B's tuning minus A's; B sounds 100 x semitones + tuning higher than A
    std::vector<Stretch> stretches; ///< in order of time; none when the two share nothing
    std::vector<Alone> only_a, only_b;

    /// The other side's time; none where it has no counterpart.
    [[nodiscard]] std::optional<Seconds> to_b(Seconds a) const;
    [[nodiscard]] std::optional<Seconds> to_a(Seconds b) const;
};

/// How fast B is against A at a time of A: 1 = alike, 2 = twice as fast.
struct TempoPoint {
    Seconds a;
    double speed = 1;
};

/// One point every 2 s where both have the seconds around it: slope of the path over `over`, which evens out
/// single notes.
std::vector<TempoPoint> tempo_curve(const Alignment& alignment, Seconds over = Seconds(6));

} // namespace luft::compare
