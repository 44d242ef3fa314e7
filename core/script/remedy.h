// What to change so that a warning goes.
#pragma once

#include "script/cue_sheet.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::script {

/// A change to the script: items as they would be, with position 0 where their time has changed; those with
/// id 0 are new.
struct Remedy {
    std::string words; ///< what it does, for a button: "Halt at 0:31.2 instead"
    std::vector<project::ScriptItem> items;
};

/// What helps against one warning of `sheet`, the layout of `source`; none when only the coach can tell (to
/// shorten the words, or to leave something out).
///
/// A stop inside a note moves to the nearest phrase end; one too close to the last moves on to a phrase end
/// that is far enough, or the two talk at one halt. An aside on singing, cut off or not played moves to the
/// nearest rest that it fits, or becomes a stop at the nearest phrase end. A quote too long is shortened: the
/// music before a halt starts later, at a phrase; the music at the end of the recording ends sooner, at a
/// phrase end; only where neither can be, a halt for words is added. The same where too large a share is
/// quoted: the longest music first. A quote of another performance ends sooner, at one of its phrase ends;
/// one that lies outside its recording is cut to it, or left out.
///
/// All of them were tried on a layout: a warning on an item goes, and none of another kind comes onto it
/// (where one remedy leaves the item without any warning, it is that one); quotes get shorter, which may take
/// several steps, and no item gets a warning for it. Only the added halt shortens nothing until it has words.
std::optional<Remedy> remedy_for(const Source& source, const CueSheet& sheet, const Warning& warning);

} // namespace luft::script
