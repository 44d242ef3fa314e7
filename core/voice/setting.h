// Is the voice alone, or do other instruments sound along?
#pragma once

#include "voice/curves.h"

#include <span>

namespace luft::voice {

/// What the decision rests on; gathered in the first pass.
struct SettingEvidence {
    double side_share = 0; ///< power of the side signal over that of the middle, over loud frames
    double aperiodicity =
        1; ///< median depth of the pitch dip over loud frames (voice/yin.h): 0 = one clean pitch
    double quiet_share = 0; ///< share of frames 35 dB or more under the loud ones: rests of a voice alone
};

/// A voice alone is periodic whenever it is loud, and quiet between phrases; a mix is neither.
/// Own rule; thresholds tuned on the scenes of the project's singer (tests/scenes).
Setting find_setting(const SettingEvidence& evidence);

/// Gathers the evidence from what pass one kept of each frame.
SettingEvidence weigh_setting(std::span<const float> levels, std::span<const float> aperiodicity,
                              std::span<const float> side_ratio);

} // namespace luft::voice
