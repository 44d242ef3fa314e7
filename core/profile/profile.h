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
};

/// A place in the recording that shows something.
struct Example {
    Span span;
    std::string words; ///< what is to be heard there, with the measured value
};

/// How often and how long a shade occurs.
struct ShadeShare {
    vocabulary::Tag tag;
    std::string name;
    int count = 0;                 ///< notes, breaths … or tagged moments
    Seconds time;                  ///< of the spans that show it
    double share = 0;              ///< of the facet's time (of its count where marks have no length), 0 to 1
    std::array<int, 3> by_range{}; ///< count in low, middle and high third of the singer's sung range
    std::array<int, 4> by_quarter{}; ///< count in each quarter of the song
    int by_coach = 0;            ///< of `count`, how many rest on the coach's tag rather than on detection
    std::optional<Example> best; ///< clearest example
};

/// A measured number over the performance.
struct Measure {
    std::string name;
    std::string unit;
    double median = 0;
    double low = 0;   ///< 10th percentile
    double high = 0;  ///< 90th percentile
    int count = 0;    ///< values it rests on
    std::string note; ///< what it means and where it fails, in a line
};

struct FacetProfile {
    std::string key, name;
    vocabulary::Basis basis = vocabulary::Basis::measured;
    std::string summary;            ///< one or two plain sentences
    std::vector<ShadeShare> shades; ///< those that occur, most first
    std::vector<Measure> measures;
    std::optional<Example> best;    ///< best example of the facet done well
    std::optional<Example> counter; ///< counter-example
};

/// A line of one of the three lists.
struct Finding {
    std::string facet; ///< key
    std::string words; ///< one sentence with its evidence
    std::vector<Example> examples;
    bool hint = false;  ///< only hinted at by sound
    bool coach = false; ///< the coach's judgement
    std::string drill;  ///< key; practise list only
};

struct Profile {
    std::vector<std::string> headline; ///< a few sentences that sum the performance up
    std::vector<FacetProfile> facets;  ///< in the vocabulary's order; facets with nothing to say are left out
    std::vector<Finding> strengths, watch, practise;
    MidiPitch lowest, highest;               ///< of the sung notes
    MidiPitch tessitura_low, tessitura_high; ///< the middle 80 % of the sung time lies between them
    Seconds sung;                            ///< time on notes
    Seconds duration;
    int notes = 0, breaths = 0, phrases = 0, switches = 0;
    int left_out = 0; ///< proposals too unsure to count (confidence under kLeastConfidence)
};

/// Proposals less sure than this stay out of a profile; kept marks always count.
inline constexpr Confidence kLeastConfidence{0.5};

Profile make_profile(const Source& source);

} // namespace luft::profile
