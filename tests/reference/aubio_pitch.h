// The pitch trackers of libaubio, an independent library, for comparison.
#pragma once

#include "base/curve.h"

#include <memory>
#include <span>
#include <string>

namespace luft::reference {

/// Pitch every 10 ms by one of aubio's methods ("yinfft", "yinfast" …) with its own usual settings and a
/// buffer of 2048 samples that ends with the frame, so its middle lies some 23 ms before it. Aubio nearly
/// always guesses; where it doesn't there is none.
class AubioPitch {
  public:
    /// Plans with FFTW, so not while another thread does. Throws Error(not_found) for another method.
    explicit AubioPitch(const std::string& method);

    /// The samples' rate must be 44.1 kHz. Starts from silence each time.
    [[nodiscard]] Curve<Hertz> track(std::span<const float> samples);

  private:
    struct Free {
        void operator()(void* tracker) const;
    };
    std::unique_ptr<void, Free> tracker_;
};

} // namespace luft::reference
