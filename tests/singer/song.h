// What is to be sung: notes, breaths and rests in phrases.
#pragma once

#include "marks/marks.h"
#include "singer/voices.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace luft::singer {

/// Begins a note. Unvoiced ones are bait for a breath finder: noise that is no breath.
enum class Consonant { none, h, s, f, sh, t, k, m, n, l };

/// How a note begins. `legato` carries on from the note before it in one breath (with a consonant between
/// them the line is joined when the consonant is voiced, m n l).
enum class Start { glottal, breathy, balanced, legato };

/// How level goes through a note, around its own level.
struct LevelPath {
    marks::LevelShape shape = marks::LevelShape::steady;
    Decibels change{
        0}; ///< growing, fading: from start to end; swelling: height of the middle; fluctuating: swing
};

struct VibratoPlan {
    Hertz rate{5.5};
    Cents extent{50};    ///< half the peak-to-peak swing
    Seconds delay{0.20}; ///< straight for that long, then growing over a quarter of a second
    double unrest = 0;   ///< standard deviation of each cycle's rate and extent, as a share; 0 = all alike
};

/// A change of register inside a note.
struct Flip {
    Seconds after; ///< from the note's start
    marks::Register to = marks::Register::head;
    bool broken = true; ///< heard as a crack; false = covered
};

struct SungNote {
    Seconds length{0.5}; ///< until the next event; consonant, onset noise and offset are inside it
    MidiPitch pitch{60}; ///< in equal temperament on the singer's tuning
    Vowel vowel = Vowel::a;
    Start start = Start::balanced;
    marks::OffsetKind end = marks::OffsetKind::clean; ///< unused where the next note joins on
    marks::Register sung_in = marks::Register::chest;
    Decibels level{0}; ///< against the singer's usual level
    LevelPath path = {};
    std::optional<VibratoPlan> vibrato = {};
    Cents off{0};   ///< mistuning of the whole note
    Cents drift{0}; ///< from start to end
    Cents scoop{0}; ///< how far below the pitch it begins
    Consonant consonant = Consonant::none;
    std::optional<Flip> flip = {};
    bool broken_switch = false;            ///< when the register differs from the note before: with a crack
    std::optional<Formants> formants = {}; ///< in place of the voice type's own
    std::string syllable = {};
};

/// A breath in.
struct Breath {
    Seconds length{0.4};
    std::optional<Decibels> level = {}; ///< against the singer's usual level; none = the singer's own
    bool silent = false;                ///< time is taken, nothing is heard
};

struct Rest {
    Seconds length{0.5};
};

using Event = std::variant<SungNote, Breath, Rest>;

/// One line of the song. Breaths and rests before its first and after its last note lie outside the phrase.
struct Phrase {
    std::vector<Event> events;
    std::string words = {};
};

struct Song {
    std::vector<Phrase> phrases;
};

} // namespace luft::singer
