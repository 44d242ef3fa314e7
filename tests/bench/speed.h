// How long the ear takes, and how much memory.
#pragma once

#include "base/units.h"

#include <filesystem>
#include <string>

namespace luft::bench {

/// Processor time, so that it is what one core takes, whatever else the machine does. Best of the runs.
struct Speed {
    double real_time_factor = 0; ///< seconds of sound a second
    double over_floor =
        0; ///< times as long as only decoding, bringing to the ear's rate and one transform a hop take
};

/// The whole analysis of a file of that length (44.1 kHz AAC at 160 kbit/s in one channel for a voice alone,
/// in two for one over a band), decoding included. Only one thread of the process may be working.
Speed measure_speed(bool with_band, Seconds length, int runs);

/// Peak memory, in MB (10^6 bytes), of a process that listens to a stereo scene looped for `length`: it holds
/// nothing of the sound but one round, whose size is taken off. Runs `program --listen-for SECONDS --round
/// FILE` and waits for it. Throws Error(internal) when it fails.
double measure_memory(const std::string& program, Seconds length);

/// What that process does; prints the figure.
void listen_for(Seconds length, const std::filesystem::path& round);

} // namespace luft::bench
