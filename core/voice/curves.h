// The curves of a performance: everything that the ear measures over time.
#pragma once

#include "base/curve.h"

#include <optional>
#include <vector>

namespace luft::voice {

/// All curves have the same number of frames. What each one is, its source and its limits stand in the header
/// of the measure that makes it (pitch.h, closure.h, ring.h, …) and in docs/methods.md.
struct Curves {
    Curve<Hertz> f0;            ///< sung pitch; none where nobody sings
    Curve<Share> voicing;       ///< probability that the frame is sung on a pitch
    Curve<Lufs> loudness;       ///< momentary loudness (400 ms) of the whole recording
    Curve<Decibels> level;      ///< level of the voice itself, dB below full scale
    Curve<Decibels> cpp;        ///< cepstral peak prominence
    Curve<Decibels> hnr;        ///< harmonics-to-noise ratio
    Curve<Decibels> h1h2;       ///< first minus second harmonic, freed of the first formant
    Curve<Decibels> ring;       ///< strongest partial in 2-4 kHz against strongest below 2 kHz
    Curve<Decibels> alpha;      ///< energy 1-5 kHz over energy 50 Hz-1 kHz
    Curve<Hertz> centroid;      ///< spectral centre of gravity of the voice, power-weighted
    Curve<Hertz> f1;            ///< first formant; withheld where the harmonics are too sparse
    Curve<Hertz> f2;            ///< second formant
    Curve<Hertz> f3;            ///< third formant
    Curve<Share> head_register; ///< probability of head register; none where the evidence doesn't split

    [[nodiscard]] std::size_t frames() const { return f0.size(); }
};

/// Loudness of the whole recording by ITU-R BS.1770 and EBU R 128; none when it is too short or silent.
struct Loudness {
    std::optional<Lufs> integrated;
    std::optional<LoudnessUnits> range;
    std::optional<Decibels> true_peak; ///< dBTP, loudest channel
};

/// Whether other instruments sound along.
enum class Setting { alone, accompanied };

} // namespace luft::voice
