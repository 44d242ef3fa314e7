// A small band under the voice.
#pragma once

#include "singer/instruments.h"

#include <cstdint>
#include <span>
#include <vector>

namespace luft::singer {

/// One tone of the band.
struct Tone {
    Instrument instrument = Instrument::plucked;
    Seconds at;
    Seconds length{0.5};
    MidiPitch pitch{60};
    Decibels level{0}; ///< against the instrument's own
    double pan = 0;    ///< -1 left to 1 right
};

/// A chord and how long it lasts.
struct Chord {
    MidiPitch bass{45};
    std::vector<MidiPitch> tones; ///< low to high
    double beats = 4;
};

struct BandStyle {
    Instrument harmony =
        Instrument::plucked; ///< plucked: broken chords in quavers; struck: chords on 1 and 3
    bool drums = true;       ///< low drum on 1 and 3, brush on 2 and 4
    Seconds beat{0.7};
    Seconds from{0}; ///< time of the first beat
};

/// Plays the progression from `style.from` on.
std::vector<Tone> accompany(std::span<const Chord> chords, const BandStyle& style);

/// Left and right, same length.
struct Stereo {
    std::vector<float> left, right;
};

/// The tones as sound. Equal-power panning.
Stereo play(std::span<const Tone> tones, Seconds length, SampleRate rate, std::uint64_t seed);

/// The voice in the centre over the band, interleaved left right. The band is scaled so that the voice, where
/// it sounds (its frames of 50 ms within 30 dB of its loudest), stands `voice_over_band` above the band's
/// mean level in the same frames, both summed over the channels. Length is the longer of both.
std::vector<float> mix(std::span<const float> voice, const Stereo& band, Decibels voice_over_band,
                       SampleRate rate);

/// The same with a voice that has two sides already, as from a room.
std::vector<float> mix(const Stereo& voice, const Stereo& band, Decibels voice_over_band, SampleRate rate);

} // namespace luft::singer
