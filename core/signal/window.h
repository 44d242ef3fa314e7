// Windows that frames are weighted by.
#pragma once

#include <vector>

namespace luft::signal {

/// Periodic Hann window of n samples, 0.5 - 0.5 cos(2 pi i / n) (Harris 1978, eq. 27b).
std::vector<float> hann(std::size_t n);

} // namespace luft::signal
