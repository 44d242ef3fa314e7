// The technique profile of one performance: every facet summed up from marks and tags, with evidence.
#pragma once

#include "project/model.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace luft::profile {

/// What a profile is made from: one performance as the project holds it.
struct Source {
    project::Piece piece;
    project::Performance performance;
    std::optional<project::Listening> listening;
    voice::Curves curves;
    std::vector<project::Mark> marks;     ///< without dropped ones
    std::vector<project::Moment> moments; ///< without dropped ones
    vocabulary::Vocabulary vocabulary;
    std::vector<project::SungWord> sung_words = {}; ///< under the line, in order
    std::vector<Seconds> stops = {};                ///< where the script halts
};

/// A place in the recording that shows something.
struct Example {
    Span span;
    std::string words; ///< what is to be heard there, with the measured value; no time, no full stop
};

/// How often and how long a shade occurs.
struct ShadeShare {
    vocabulary::Tag tag;
    std::string name;
    std::string axis; ///< shades of one axis exclude each other, so that their shares can be stacked
    std::string of;   ///< what `share` is a share of: "of 42 note starts", "of 1:12 of sung time"
    int count = 0;    ///< notes, breaths … or tagged moments
    Seconds time;     ///< of the spans that show it
    double share = 0; ///< by time or by count, as `of` says; 0 to 1
    int out_of = 0;   ///< how many there are that might show it; 0 where only the coach's tags are counted
    std::array<int, 3> by_range{};   ///< count in the low, middle and high third of the sung range
    std::array<int, 4> by_quarter{}; ///< count in each quarter of the song
    int by_coach = 0;                ///< of `count`, how many the coach's own tags stand for or confirm
    std::optional<Example> best;     ///< clearest example
};

/// What the shades of one axis are counted among, whether or not any occurs.
struct ShadeAxis {
    std::string name;
    std::string of; ///< as ShadeShare's
    int out_of = 0; ///< as ShadeShare's
};

/// A measured number over the performance.
struct Measure {
    std::string key; ///< lower-case with underscores, the unit at the end: "vibrato_rate_hz"
    std::string name;
    std::string unit;
    int digits = 0; ///< after the point, as many as the measure is good for
    double median = 0;
    double low = 0;                                  ///< 10th percentile
    double high = 0;                                 ///< 90th percentile
    int count = 0;                                   ///< values it rests on
    std::array<std::optional<double>, 3> by_range;   ///< medians; none where too few values lie there
    std::array<std::optional<double>, 4> by_quarter; ///< the same over the song
    std::string note;                                ///< what it means and where it fails, in a line
};

/// Something that sound hints at and nobody should take for a finding.
struct FacetHint {
    std::string key;   ///< lower-case with dashes: "pitch-corrected"
    std::string words; ///< with its evidence, worded as a hint
    int signs = 0;     ///< independent signs that speak for it
    struct Figure {
        std::string key; ///< as a Measure's
        std::string unit;
        double value = 0;
        int count = 0;     ///< values it rests on
        double border = 0; ///< it speaks under this
    };
    std::vector<Figure> evidence;
};

struct FacetProfile {
    std::string key, name;
    vocabulary::Basis basis = vocabulary::Basis::measured;
    std::string summary;            ///< one to four plain sentences
    std::vector<ShadeShare> shades; ///< those that occur; axis by axis, most first
    std::vector<ShadeAxis> axes;    ///< those on which a shade could have occurred
    std::vector<Measure> measures;
    std::vector<FacetHint> hints;
    std::optional<Example> best;    ///< best example of the facet done well
    std::optional<Example> counter; ///< counter-example, or the contrast to it
};

/// A line of one of the three lists.
struct Finding {
    std::string facet; ///< key
    std::string words; ///< one or two sentences with their evidence
    std::vector<Example> examples;
    bool hint = false;  ///< only hinted at by sound
    bool coach = false; ///< the coach's judgement
    std::string drill;  ///< key; practise list only
};

/// Pitches are counted at the performance's own tuning, so that note names are those on the page.
struct SungRange {
    MidiPitch lowest, highest;               ///< of the sung notes
    MidiPitch tessitura_low, tessitura_high; ///< the middle 80 % of the sung time lies between them
    std::array<MidiPitch, 2> thirds;         ///< where the middle third begins and ends
    bool divided = false;                    ///< wide enough to be told in thirds; else all counts as middle
};

struct Profile {
    std::string piece, label, performer, source, permission;
    std::optional<project::Listening> listening;

    std::vector<std::string> headline; ///< a few sentences that sum the performance up
    std::vector<FacetProfile> facets;  ///< in the vocabulary's order; facets with nothing to say are left out
    std::vector<Finding> strengths, watch, practise;
    std::vector<vocabulary::Drill> drills; ///< those that `practise` names
    std::optional<SungRange> range;        ///< none without notes
    std::array<Seconds, 5> quarters;       ///< bounds of the quarters: first to last sung note
    Seconds sung;                          ///< time on notes
    Seconds duration;
    int notes = 0, breaths = 0, phrases = 0, switches = 0;
    int left_out = 0; ///< proposals too unsure to count (confidence under kLeastConfidence)
};

/// Proposals less sure than this stay out of a profile; kept marks always count.
inline constexpr Confidence kLeastConfidence{0.5};

/// Sums a performance up. Works on whatever there is: without marks, without curves, without a vocabulary.
/// The same source gives the same profile.
Profile make_profile(const Source& source);

} // namespace luft::profile
