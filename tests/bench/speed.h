// How long the ear takes, and how much memory.
#pragma once

#include "base/units.h"

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

/// Peak memory of a process that listens to a stereo scene looped for `length` and holds nothing of it but
/// one round, MB (10^6 bytes), without that round. Runs `program --listen-for SECONDS` and blocks until it is
/// done. Throws Error(internal) when it fails.
double measure_memory(const char* program, Seconds length);

/// What that process does; prints its peak memory in MB to stdout.
void listen_for(Seconds length);

} // namespace luft::bench
