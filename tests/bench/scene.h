// One thing to listen to, and what is true about it.
#pragma once

#include "base/curve.h"
#include "marks/marks.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace luft::bench {

/// The sung pitch every 10 ms; none where nobody sings.
struct TruePitch {
    Curve<Hertz> hz;
    std::vector<bool> known; ///< frames about which nothing is known aren't scored; empty = all are known
};

struct TrueBreath {
    Span span;
    bool audible = true; ///< see audible() in truth.h
    bool inside_phrase = false;
    bool doubtful = false; ///< neither wanted nor held against
};

struct TrueSwitch {
    Seconds time;
    marks::Register from = marks::Register::chest, to = marks::Register::head;
    bool between_phrases = false; ///< not wanted (marks/switches.h); not held against either
};

struct TrueVowel {
    Hertz f1, f2;
};

struct TrueNote {
    Span span;
    MidiPitch pitch; ///< against A4 = 440 Hz
    std::optional<marks::OnsetKind> onset;
    std::optional<marks::OffsetKind> offset;
    std::optional<marks::Vibrato> vibrato;
    std::optional<TrueVowel> vowel;
};

/// Whatever isn't known is empty, and isn't scored.
struct Truth {
    std::optional<TruePitch> pitch;
    std::optional<std::vector<TrueBreath>> breaths;
    std::optional<std::vector<Span>> phrases;
    std::optional<std::vector<TrueSwitch>> switches;
    std::optional<std::vector<TrueNote>> notes;
    bool notes_in_full = false;           ///< vibrato is known of every note: none means straight
    std::optional<Curve<Decibels>> level; ///< of the voice, RMS over 40 ms
    std::optional<Curve<Share>> head;     ///< 0 chest, 1 head; none where not voiced
    std::vector<Span> instrumental;       ///< at least 3 s in which nobody sings
};

struct Scene {
    std::string group, name;
    std::vector<float> samples; ///< interleaved
    int channels = 1;
    SampleRate rate{44100};
    Truth truth;

    [[nodiscard]] Seconds length() const {
        return Seconds(static_cast<double>(samples.size()) / channels / rate.per_second);
    }
};

} // namespace luft::bench
