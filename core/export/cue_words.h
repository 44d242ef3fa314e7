// The words around a cue sheet that its HTML and its PDF share.
#pragma once

#include "script/cue_sheet.h"

#include <string>
#include <vector>

namespace luft::exports {

/// "12.3 s", from a minute on "1:02.3".
std::string length_words(Rational length);

/// One of the figures at a cue sheet's head: four, and one more where other performances are quoted.
struct Figure {
    std::string name, value, note;
};
std::vector<Figure> cue_figures(const script::Source& source, const script::CueSheet& sheet);

/// "Breathy onset" of "Stop 2: breathy onset", whose number stands apart; of other talks the title.
std::string talk_heading(const script::Segment& talk);

/// "The recording plays and halts for stop 2", "… to the end", "… to the closing"; a replay's and a quote's
/// own title.
std::string music_words(const script::CueSheet& sheet, const script::Segment& music);

/// Where in which recording a segment is: "0:12.3", "B 0:12.3" of another performance.
std::string media_place(const script::Source& source, const script::Segment& segment);

/// A line of the credits, those of quoted performances included; `text` says so where nothing is noted.
struct Credit {
    std::string name, text;
};
std::vector<Credit> credits(const script::Source& source, const script::CueSheet& sheet);

/// Length, speaking rate and frame rate, each in a few words.
std::vector<std::string> cue_facts(const script::Source& source, const script::CueSheet& sheet);

/// Title of the piece, or what stands for it.
std::string title_of(const project::Piece& piece);

} // namespace luft::exports
