// Chapters of the finished programme, as the lines of text that video pages read.
#pragma once

#include "script/cue_sheet.h"

#include <string>
#include <vector>

namespace luft::exports {

struct Chapter {
    Rational start; ///< programme time
    std::string title;
};

/// Chapters closer together than this are one. Video pages ignore shorter ones; common practice, no source.
inline constexpr Rational kLeastChapter{10};

/// The opening (or the piece, where there is none), the music where it first begins, each stop at its halt,
/// and the closing. The first starts at 0; each starts at least kLeastChapter after the one before: music
/// that starts sooner has no chapter of its own, and a stop that comes sooner shares the one before it.
std::vector<Chapter> chapters(const script::Source& source, const script::CueSheet& sheet);

/// One chapter a line, "0:00 Opening"; from an hour on "1:02:03 Title". Times are whole seconds, rounded
/// down.
std::string chapters_text(const std::vector<Chapter>& chapters);

} // namespace luft::exports
