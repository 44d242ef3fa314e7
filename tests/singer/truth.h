// What a rendition truly holds, known because it was put there.
#pragma once

#include "base/curve.h"
#include "singer/song.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::singer {

struct TrueNote {
    Span span; ///< from the first voiced moment to the last; joined notes meet in the middle of the glide
    MidiPitch pitch; ///< its centre against A4 = 440 Hz, tuning and mistuning included
    Cents off;       ///< mistuning against the singer's own tuning
    Cents drift;
    Cents scoop;
    std::optional<VibratoPlan> vibrato;
    std::optional<marks::OnsetKind>
        onset; ///< none when joined to the note before or begun by an unvoiced consonant
    std::optional<marks::OffsetKind> offset; ///< none when the next note joins on
    Vowel vowel = Vowel::a;
    Formants formants{};
    marks::Register sung_in = marks::Register::chest; ///< at its start
    Decibels level;                                   ///< RMS of its middle, dB below full scale
    LevelPath path;
    Consonant consonant = Consonant::none;
    std::size_t phrase = 0;
    std::string syllable;
};

struct TrueBreath {
    Span span;
    bool heard = true;
    bool inside_phrase = false;
    Decibels level; ///< RMS, dB below full scale; meaningless when not heard
};

struct TruePhrase {
    Span span; ///< first voiced moment of the first note to last of the last
    std::string words;
};

struct TrueSwitch {
    Seconds time;
    marks::Register from = marks::Register::chest;
    marks::Register to = marks::Register::head;
    bool joined = false; ///< in a held note or a legato line; otherwise a gap lies between
    bool broken = false;
};

/// A noise that is no breath.
struct TrueNoise {
    Span span;
    Consonant consonant = Consonant::s;
};

struct Truth {
    Seconds duration;
    Hertz tuning{440};
    Curve<Hertz> f0;       ///< every 10 ms as sung, without cycle jitter; none where not voiced (30 dB down)
    Curve<Decibels> level; ///< RMS of the dry voice over 40 ms, dB below full scale; none below -90
    Curve<Hertz> f1, f2, f3;
    Curve<Share> head; ///< 0 chest, 1 head; none where not voiced
    std::vector<TrueNote> notes;
    std::vector<TrueBreath> breaths;
    std::vector<TruePhrase> phrases;
    std::vector<TrueSwitch> switches;
    std::vector<TrueNoise> consonants; ///< unvoiced ones
};

} // namespace luft::singer
