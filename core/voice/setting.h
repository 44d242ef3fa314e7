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
    double quiet_share = 0; ///< share of frames 25 dB or more under the loud ones: rests of a voice alone
    double floor = 0;       ///< level that 5 % of the frames lie under, against the loud ones, dB
    double tones_in_rests =
        20;            ///< tonality that 10 % of the frames 12 dB or more under the loud ones lie under
    double tones = 20; ///< median tonality of the loud frames (Texture::tonality)
};

/// A voice alone is periodic whenever it is loud, and between phrases it leaves quiet in which only breaths
/// and hiss are; a mix is not periodic, and goes on sounding. Where nothing has partials, as in noise, there
/// is no accompaniment either, and a voice alone is looked for. Own rule; thresholds set on
/// songs of the project's singer dry, noisy and in rooms (seeds 1000 to 1049, 1700 to 1759), five songs by
/// one recorded singer, one recorded band and four sung mixes: few, so that the coach can overrule it.
Setting find_setting(const SettingEvidence& evidence);

/// Gathers the evidence from what pass one kept of each frame.
SettingEvidence weigh_setting(std::span<const float> levels, std::span<const float> aperiodicity,
                              std::span<const float> side_ratio, std::span<const float> tonality);

} // namespace luft::voice
