// What is spoken in a programme, split into captions that one can read.
#pragma once

#include "script/cue_sheet.h"

#include <cstdint>
#include <string>
#include <vector>

namespace luft::exports {

/// One caption: one or two lines, shown from `start` to `end` of programme time.
struct Caption {
    Rational start, end;
    std::vector<std::string> lines;
};

/// At most this many characters a line and lines a caption: what subtitling guides agree on.
inline constexpr std::size_t kCaptionLine = 40;
inline constexpr std::size_t kCaptionLines = 2;

/// Fastest reading pace, words a minute: at most 160 to 180 in British guidance (Ofcom, as told by BBC R&D
/// 2015). A talk that is faster lends from the silence or music after it, as far as there is any.
inline constexpr int kCaptionWordsPerMinute = 180;

/// Captions of all talks and asides in order, none overlapping another. Words keep their order and none is
/// left out; white space is folded, control characters go, malformed UTF-8 is replaced, and a word longer
/// than a line is cut into lines. Breaks are put after sentences and clauses where they can be.
std::vector<Caption> captions(const script::CueSheet& sheet);

/// The same in whole milliseconds, as caption files count: none is shorter than one, or starts before the
/// end of the one before it.
struct WholeCaption {
    std::int64_t start_ms = 0, end_ms = 0;
    std::vector<std::string> lines;
};
std::vector<WholeCaption> whole_captions(const script::CueSheet& sheet);

/// Splits a text into captions' lines, without times.
std::vector<std::vector<std::string>> caption_lines(const std::string& text);

} // namespace luft::exports
