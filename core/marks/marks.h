// What the ear locates in a performance: notes, breaths, phrases and register switches.
#pragma once

#include "base/units.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::marks {

enum class Register { chest, head };
enum class OnsetKind { glottal, breathy, balanced };
enum class OffsetKind { clean, breathy, trailing };
enum class BreathEvidence {
    heard,    ///< the breath itself is in the sound
    inferred, ///< only the gap in the phrase speaks for it (accompaniment covers it)
};
enum class LevelShape { steady, growing, fading, swelling, fluctuating }; ///< swelling: up and down again

/// Dynamic marks, soft to loud: relative to the singer's own range in this performance, never a loudness.
enum class Dynamic { pp, p, mp, mf, f, ff };

/// A regular swing of pitch.
struct Vibrato {
    Hertz rate;
    Cents extent;          ///< half the peak-to-peak swing: "+- extent"
    double regularity = 0; ///< 0 to 1; 1 = every cycle alike
};

/// First two formants over the steady part of a note, and the vowel of the published tables nearest to them.
struct Vowel {
    Hertz f1;
    Hertz f2;
    std::string nearest; ///< IPA sign; empty when nothing lies near
};

struct Onset {
    OnsetKind kind = OnsetKind::balanced;
    Confidence confidence;
    std::string evidence; ///< what was measured, in words a teacher reads
};

struct Offset {
    OffsetKind kind = OffsetKind::clean;
    Confidence confidence;
    std::string evidence;
};

/// One sung note.
struct Note {
    Span span;
    MidiPitch pitch;                ///< median over the steady part, against A4 = 440 Hz
    Cents cents;                    ///< off the nearest semitone at the performance's own tuning
    Cents drift;                    ///< pitch at the end minus pitch at the start of the steady part
    std::optional<Cents> scoop;     ///< how far below the note was started, above 0; none when not scooped
    std::optional<Vibrato> vibrato; ///< none when there is none, or the note is too short to tell
    Onset onset;
    Offset offset;
    std::optional<Vowel> vowel;      ///< none where formants were withheld
    std::optional<Register> sung_in; ///< none when the performance doesn't split into two registers
    Decibels level;                  ///< median level of the voice
    LevelShape shape = LevelShape::steady;
    Decibels level_change; ///< end minus start, of a line fitted through the note
    Confidence confidence;
    std::string evidence;
    std::optional<Dynamic> dynamic = {}; ///< none where there is too little to judge by
};

struct Breath {
    Span span;
    BreathEvidence evidence_kind = BreathEvidence::heard;
    bool inside_phrase = false; ///< taken where the line goes on: the gap is short and nothing else ends
    std::optional<Decibels> below_voice; ///< level under the singing near it; heard breaths only
    Confidence confidence;
    std::string evidence;
};

/// How the level of the voice goes through a phrase.
struct PhraseLevel {
    LevelShape shape = LevelShape::steady;
    Decibels change; ///< end minus start of the smoothed path
    Decibels rise;   ///< how far the path's highest point stands over the higher of its ends, 0 or more
    std::optional<double> peak_at; ///< where the path is highest, share of the phrase; none when steady
    Confidence confidence;         ///< of the shape
};

struct Phrase {
    Span span;
    Confidence confidence;
    std::string evidence;
    std::optional<PhraseLevel> level = {}; ///< none where it is too short, or was drawn by the coach
    std::optional<Dynamic> dynamic = {};   ///< of its notes together
};

struct Switch {
    Seconds time;
    Register from = Register::chest;
    Register to = Register::head;
    bool leap = false; ///< on a jump of pitch, rather than within a held or joined line
    Confidence confidence;
    std::string evidence;
};

} // namespace luft::marks
