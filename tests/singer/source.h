// The glottal source: one LF pulse after another, each with its own length, strength and shape.
#pragma once

#include "base/units.h"
#include "singer/lf.h"
#include "singer/random.h"

#include <functional>
#include <span>
#include <vector>

namespace luft::singer {

/// What a glottal cycle is made from; asked for at the cycle's start.
struct CycleShape {
    Hertz f0{100};
    double rd = 1;
    double jitter = 0;  ///< standard deviation of the cycle's length, as a share of it
    double shimmer = 0; ///< standard deviation of its strength, as a share of it
};

/// Source samples at the working rate: the flow derivative (steepest closing -1), and how open the glottis is
/// (0 to 1), by which breath noise is modulated.
struct SourceSamples {
    std::vector<float> flow;
    std::vector<float> opening;
};

/// A pulse train of `samples` samples. Pulses start at any fraction of a sample; the train is computed at
/// four times the rate and brought down by a 96-tap windowed-sinc filter (Kaiser, beta 8), whose delay is
/// taken out, so that aliases lie 70 dB and more under the harmonics. `shape_at` is asked with times from 0
/// on.
SourceSamples pulse_train(std::size_t samples, SampleRate rate, Random random,
                          const std::function<CycleShape(Seconds)>& shape_at);

} // namespace luft::singer
