// Labels by hand, as recorded_groups (groups.h) describes them.
#pragma once

#include "bench/scene.h"

#include <filesystem>

namespace luft::bench {

/// Whatever kinds occur in events.csv. Throws Error(unreadable) where a time isn't a number.
Truth events_of(const std::filesystem::path& csv);

/// f0.csv on our frames; a frame is known within 20 ms of a given time. Throws Error(unreadable).
TruePitch pitch_of(const std::filesystem::path& csv, Seconds length);

} // namespace luft::bench
