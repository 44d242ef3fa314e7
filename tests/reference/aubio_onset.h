// The onset detector of libaubio, an independent library.
#pragma once

#include "base/units.h"

#include <span>
#include <string>
#include <vector>

namespace luft::reference {

/// Where something begins, by one of aubio's methods ("hfc", "complex", "energy" …) with its own usual
/// settings, a window of 1024 samples and steps of 128. Throws Error(not_found) for another method. Plans
/// with FFTW, so not while another thread does.
std::vector<Seconds> aubio_onsets(const std::string& method, std::span<const float> samples, SampleRate rate);

} // namespace luft::reference
