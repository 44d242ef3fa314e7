// The learnt weights of presence.h.
#pragma once

#include "voice/presence.h"

namespace luft::voice {

inline constexpr std::size_t kPresenceHidden = 6;

/// A hidden unit: tanh of the weighted sum of the features, and what it counts for.
struct PresenceUnit {
    PresenceFeatures weights{};
    float counts = 0;
};

/// Printed by `luft-learn-presence` (tests/bench), learnt on seeds 1000 to 1023 of the benchmark's groups
/// with an invented band; its size was chosen on seeds 1024 to 1039, where sampled bands are among the
/// groups.
extern const std::array<PresenceUnit, kPresenceHidden> kPresenceUnits;
extern const float kPresenceBias;

} // namespace luft::voice
