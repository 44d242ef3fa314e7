// The piece "Over Water": melody, words and chords, before anybody sings it.
#pragma once

#include "singer/band.h"
#include "singer/song.h"

#include <string>
#include <vector>

namespace luft::sample {

/// One line of the words as notes, and what comes after it.
struct Line {
    std::vector<singer::Event> events;
    std::string words;
    double pause = 0.5;                   ///< beats between this line and the next
    std::optional<singer::Breath> breath; ///< taken in that pause
    bool goes_on = false; ///< sung into the next line without a pause, which its last note then fills
};

/// How a performance lies: key and tempo.
struct Frame {
    MidiPitch tonic{57};
    Seconds beat{0.7};
};

inline constexpr double kIntroBeats = 8, kInterludeBeats = 8, kEndingBeats = 8;
inline constexpr std::size_t kLines = 8; ///< two verses of four

/// The eight lines, plainly sung: one legato line each, every first note balanced, every last one clean, a
/// heard breath in every pause.
std::vector<Line> plain_lines(const Frame& frame);

/// The note of a line; later notes count without breaths and rests.
singer::SungNote& note(Line& line, std::size_t index);

/// Takes a breath inside a line: the note `index` gives `beats` of its length away.
void breathe_after(Line& line, std::size_t index, double beats, const singer::Breath& breath,
                   const Frame& frame);

/// Sings a note as a turn: itself, above, itself, below, itself. Steps in semitones.
void turn(Line& line, std::size_t index, double above, double below, const Frame& frame);

/// The whole song, with the rests for intro and interlude.
singer::Song whole(std::vector<Line> lines, const Frame& frame, const singer::Breath& first_breath);

/// The chords of intro, verses, interlude and ending.
std::vector<singer::Chord> chords(const Frame& frame);

} // namespace luft::sample
