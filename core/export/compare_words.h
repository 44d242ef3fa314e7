// What every report on two performances says in the same words.
#pragma once

#include "compare/comparison.h"
#include "compare/telling.h"

#include <string>
#include <vector>

namespace luft::exports {

/// "0:05.8-0:16.3".
std::string span_words(Span span);

/// "B sings 3 semitones higher; its A4 lies 2 cents lower", or "both are tuned alike".
std::string key_words(const compare::Comparison& c);
/// "B runs at 114 % of the speed of A, between 110 and 121 %".
std::string tempo_words(const compare::Comparison& c);
/// "53 pairs; inside these phrases A sings 0 more, B 3 more".
std::string notes_words(const compare::Comparison& c);

/// First phrase's start to last phrase's end.
Span whole_of(const std::vector<std::size_t>& phrases, const std::vector<marks::Phrase>& all);

/// A row of phrases that belong together; "no counterpart" where there is none.
struct PhraseLine {
    std::string a, b;
};
/// Pairs in order of time, then those of A without counterpart, then those of B.
std::vector<PhraseLine> phrase_lines(const compare::Comparison& c);

/// What isn't sure, then what only one of the two has; sentences without a full stop.
std::vector<std::string> gaps_words(const compare::Comparison& c);

/// "-6.2 dB", "38 cents"; empty for what is counted.
std::string size_words(const compare::Difference& d);
/// What measuring error alone would give: "1.8 cents"; of what is counted, the probability that it is the
/// ear's error: "under 1 %".
std::string expected_words(const compare::Difference& d);
/// "81 %"; never "100 %", which no ear is.
std::string sure_words(const compare::Difference& d);

/// One of the two, in short lines: who, where it is from, how it was heard, what was found.
struct Portrait {
    std::string label;
    std::vector<std::string> lines;
};
Portrait portrait(const project::Performance& performance, const compare::Side& side);

/// One thing to say about the two.
struct TalkPoint {
    std::size_t difference = 0; ///< its place in the list of all
    std::string words;          ///< a full sentence; two where another says the same place's other side
    std::string hear;           ///< "Hear vasslow 0:11.1, marnik 0:09.8"; empty for what holds for the whole
    std::string sure;           ///< "81 % sure, 4 times the measuring error"
};
/// The most telling differences first; see compare::most_telling.
std::vector<TalkPoint> talk_points(const compare::Comparison& c);

/// What a report opens with: key and tempo, or that the two share nothing.
std::vector<std::string> lead_words(const compare::Comparison& c);
/// How the table of differences is to be read.
std::string table_words(const compare::Comparison& c);
/// What has to be said beside every such list, in a few words.
std::string talk_caution();
/// Said where the two share nothing.
std::string nothing_shared(const compare::Comparison& c);
/// Said where nothing differs.
std::string nothing_differs();

} // namespace luft::exports
