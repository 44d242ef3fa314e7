// The script as the window lists it: talk, music and asides in the order of the programme.
#pragma once

#include "script/cue_sheet.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::desk {

struct ScriptRow {
    enum class Kind {
        talk,  ///< playback halted: opening, stop, closing
        music, ///< the recording plays
        aside, ///< spoken over the music
    };
    Kind kind = Kind::music;
    std::optional<project::ScriptItemId> item; ///< none for music
    int stop_number = 0;                       ///< 1 for the first stop
    std::string title;                         ///< "Stop 2: breathy onset", "Music 0:12.0 to 0:31.2"
    std::string when;                          ///< programme time where it starts; empty where it has none
    std::string facts;                         ///< "58 words, 23.2 s"; "19.2 s, 4 phrases"
    std::string text;                          ///< the words, or the first words that are sung
    std::string after; ///< of a stop: "then plays B 0:12.0 to 0:15.5 and 0:41.0 to 0:44.5 again at
                       ///< 50 %; goes on at 0:46.1"
    bool own_words = false;
    std::vector<std::size_t> warnings; ///< indices into the sheet's
};

/// In order of the programme; talks without words, and items that fall nowhere, have rows as well, so that
/// every item has one.
std::vector<ScriptRow> script_rows(const script::Source& source, const script::CueSheet& sheet);

/// Warnings about the whole programme, which no row has: indices into the sheet's.
std::vector<std::size_t> warnings_on_the_whole(const std::vector<ScriptRow>& rows,
                                               const script::CueSheet& sheet);

/// "58 words, 23.2 s", and how that is known.
std::string talk_facts(const project::ScriptItem& item, const project::ScriptSettings& settings);

} // namespace luft::desk
