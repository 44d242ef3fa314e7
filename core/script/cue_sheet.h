// Programme time: the script laid out against the recording, exactly.
#pragma once

#include "base/rational.h"
#include "project/model.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::script {

/// Another performance of the piece, which the script may quote.
struct Other {
    project::Performance performance;
    std::vector<project::Mark> marks =
        {}; ///< without dropped ones; read only where a moment or stop names it
};

/// What a layout is made from.
struct Source {
    project::Piece piece;
    project::Performance performance;
    std::vector<project::Mark> marks;     ///< without dropped ones
    std::vector<project::Moment> moments; ///< without dropped ones
    std::vector<project::ScriptItem> items;
    project::ScriptSettings settings;
    vocabulary::Vocabulary vocabulary;
    std::vector<project::SungWord> sung_words = {}; ///< under the line, in order
    std::vector<Other> others = {};                 ///< all of the project's, in order of adding
};

enum class SegmentKind {
    talk,   ///< playback halted, the coach speaks (opening, stop, closing)
    play,   ///< the recording plays
    quote,  ///< a span of another performance, perhaps slowed
    replay, ///< a span of the recording again, perhaps slowed
};

/// One stretch of the programme. Times are exact, in seconds, and whole programme frames.
struct Segment {
    SegmentKind kind = SegmentKind::play;
    Rational programme_start, programme_end;
    Rational media_start, media_end; ///< talk: both where the picture stands still
    Rational speed{1};               ///< quote, replay: 1/4 to 1
    std::optional<project::ScriptItemId> item;
    std::optional<project::PerformanceId> other; ///< quote: whose media time it is; none = the script's own
    int stop_number = 0;                         ///< 1 for the first stop; 0 for others
    std::string title;                           ///< short: "Stop 2: breathy onset"
    std::string text;                            ///< talk: the words
};

/// An aside as it falls onto the programme; it lies inside a play segment.
struct AsideCue {
    project::ScriptItemId item;
    Rational programme_start, programme_end;
    Seconds media_start;
    std::string text;
};

enum class WarningKind {
    aside_on_singing,
    stop_in_note,
    stops_too_close,
    quote_too_long,
    share_too_large,
    stop_outside,
    aside_cut_off,
    quote_outside ///< a quote of another performance lies outside its recording
};

struct Warning {
    WarningKind kind;
    project::ScriptItemId item;                       ///< 0 for the whole programme
    std::string words;                                ///< one sentence
    std::optional<Seconds> remedy;                    ///< nearest place (media time) where it would fit
    std::optional<Rational> programme_start = {};     ///< of a quote: where it begins
    std::optional<project::PerformanceId> other = {}; ///< of a share: another performance's
};

/// How much another performance is quoted: as the figures of CueSheet.
struct QuotedOther {
    project::PerformanceId performance;
    Rational quoted, quoted_once;
    double quoted_share = 0; ///< of that performance's recording
    Rational longest_quote;  ///< of it alone, without a spoken word
};

/// Figures are those of the script's own recording where they don't say otherwise.
struct CueSheet {
    Rational frame_rate{25};
    bool drop_frame = false;
    std::vector<Segment> segments; ///< without gaps, from programme time 0
    std::vector<AsideCue> asides;
    Rational running_time;
    Rational talk_time;
    Rational quoted;         ///< recording played, replays included
    Rational quoted_once;    ///< recording heard at least once
    double quoted_share = 0; ///< quoted_once over the recording's length
    Rational longest_quote;  ///< longest stretch without a spoken word, quotes of other performances included
    std::vector<QuotedOther> others; ///< in the order in which they are first heard
    std::vector<Warning> warnings;
};

/// Lays the script out. Throws Error(bad_request) for settings or items that make no sense (speed 0 …).
CueSheet lay_out(const Source& source);

} // namespace luft::script
