// The spectrum of the glottal pulse, by its shape.
#pragma once

#include <vector>

namespace luft::voice {

/// Levels in dB of the first `count` harmonics of the flow derivative of the Liljencrants-Fant model (Fant,
/// Liljencrants & Lin 1985) whose shape is steered by Rd alone (Fant 1995, "The LF model revisited"): 0.3
/// pressed, 1 modal, 2.7 breathy. Only differences between harmonics mean something. Throws nothing; Rd is
/// held within 0.3 to 2.7, the range of Fant's regressions.
std::vector<float> pulse_levels(double rd, int count);

} // namespace luft::voice
