// Instruments, one tone at a time.
#pragma once

#include "base/units.h"
#include "singer/random.h"

#include <vector>

namespace luft::singer {

enum class Instrument {
    plucked, ///< a guitar-like string
    struck,  ///< a mellow keyboard
    bass,
    low_drum,
    brush, ///< swept snare: broad noise, near to a breath's length
    bowed, ///< a string that sounds on as a voice does, with vibrato
    pad,   ///< two strings a few cents apart, without vibrato, coming in slowly
};

/// One tone at an RMS near 0.1 in its loud part, without a sustain pedal: it is damped within 80 ms after
/// `length`.
///
/// plucked, bass: Karplus & Strong 1983 (Computer Music J. 7(2)), a noise burst circulating through a
/// two-point average, tuned by a first-order all-pass (Jaffe & Smith 1983, same issue). struck: six partials,
/// each dying faster than the one below. low_drum: a sine falling from 110 to 55 Hz. brush: noise around 3
/// kHz. bowed, pad: partials falling as a sawtooth's, 1/k, as the bowed string's do (Helmholtz motion;
/// Fletcher & Rossing, The Physics of Musical Instruments, section 10.3), and faster over 2.5 kHz (pad: 1
/// kHz); rise, detuning and vibrato are common practice, no source.
std::vector<float> tone(Instrument instrument, MidiPitch pitch, Seconds length, SampleRate rate,
                        Random random);

} // namespace luft::singer
