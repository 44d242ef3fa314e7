// Any channels as two.
#pragma once

#include "base/samples.h"

#include <span>
#include <vector>

namespace luft::guide {

/// Appends interleaved samples as stereo. One channel goes to both sides; two stay; more are mixed down as
/// Recommendation ITU-R BS.775-3, annex 4, has it (centre and surrounds at -3 dB, low frequencies left out),
/// all lowered alike so that full scale in every channel doesn't clip.
void append_stereo(const AudioFormat& format, std::span<const float> samples, std::vector<float>& out);

} // namespace luft::guide
