// Technique profiles of several performances side by side: a singer over months, or covers of one piece.
#pragma once

#include "profile/profile.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::profile {

/// One figure of one performance.
struct BesideCell {
    std::optional<double> value; ///< median, or a share (0 to 1); none where the performance has none
    double low = 0, high = 0;    ///< 10th and 90th percentile; of a share, the share
    int count = 0;               ///< values that it rests on; of a share, occurrences
    int out_of = 0;              ///< of a share: how many there are in all; 0 where it can't be tested
    std::string of = {};         ///< of a share, in words: "of 42 note starts"
    int stands = 0;              ///< 1: beyond all others upwards, -1: downwards, 0: neither
};

/// A measure, or the share of a shade.
struct BesideRow {
    std::string key;
    std::string name;
    std::string unit; ///< as Measure's; empty for a share
    int digits = 0;
    bool share = false;
    std::vector<BesideCell> cells; ///< one a performance, in their order
};

struct BesideFacet {
    std::string key, name;
    vocabulary::Basis basis = vocabulary::Basis::measured;
    std::vector<BesideRow> rows; ///< measures first
};

struct BesideColumn {
    std::string label, performer, source;
    std::optional<Seconds> duration; ///< none where it isn't known
    std::optional<project::Listening> listening;
    std::optional<SungRange> range;
    /// None of what nobody has looked for: not listened to, and no such mark set by the coach.
    std::optional<Seconds> sung;
    std::optional<int> notes, breaths, phrases, switches;
    std::vector<std::string> stands_out; ///< sentences; see `set_beside`
};

struct Beside {
    std::string piece;
    std::vector<BesideColumn> columns;
    std::vector<BesideFacet> facets; ///< those that at least one has figures on
};

/// Fewer values, or fewer places to show a shade, than this say nothing about a performance (no source).
inline constexpr int kLeastBeside = 5;
/// Shares nearer than this aren't spoken of (no source).
inline constexpr double kLeastShare = 0.1;

/// Sets profiles side by side. What stands out in one is told in words only where facets are `measured`, and
/// only beyond the spread that the figures themselves have:
/// - a median must lie outside the middle 80 % of every other performance's values, and theirs outside its
///   own: what is usual in one would be rare in the other. It must lie three standard errors of the
///   difference away, too, so that a few values don't do: that of a median is 1.253 s / sqrt n (of normal
///   values; Kendall & Stuart, The Advanced Theory of Statistics 1, standard errors of quantiles), with s
///   from the middle 80 %, which are 2.563 s wide;
/// - a share must be apart by Fisher's exact test (Fisher 1935, The Logic of Inductive Inference, JRSS 98),
///   two-sided under 0.0027, which is the same three standard errors. That goes by places; a share of time
///   has to differ in the same direction as its places do.
/// Performances with too few values (kLeastBeside) are passed over in this, and breaths of a voice alone
/// against an accompanied one: those were all that was claimed of six songs (seeds 951 to 956), each heard in
/// two rooms, then alone and over a band 8 dB under it (tests/profile/beside_heard_test.cpp). Where all
/// figures of a recording are shifted, by a microphone say, no spread shows it: hints are therefore never
/// told in words.
Beside set_beside(const std::vector<Profile>& profiles);

/// Whether two performances' figures are held against each other for that: both rest on enough values, and
/// mean the same in both.
bool held_against(const Beside& all, const BesideFacet& facet, const BesideRow& row, std::size_t x,
                  std::size_t y);

} // namespace luft::profile
