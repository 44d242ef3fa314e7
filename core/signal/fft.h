// The discrete Fourier transform of real samples, through FFTW (single precision).
#pragma once

#include <complex>
#include <memory>
#include <span>

namespace luft::signal {

/// A planned transform of one length, with its own buffers; one instance is used by one thread at a time.
/// Unnormalised: backward(forward(x)) = size x x.
class RealFft {
  public:
    explicit RealFft(std::size_t size); ///< even, at least 2; powers of two are fastest
    RealFft(RealFft&&) noexcept;
    RealFft& operator=(RealFft&&) noexcept;
    ~RealFft();

    [[nodiscard]] std::size_t size() const;
    [[nodiscard]] std::size_t bins() const { return size() / 2 + 1; }

    /// The samples to transform, `size()` of them; filled by the caller, and the result of `backward`.
    [[nodiscard]] std::span<float> samples();
    /// The spectrum, `bins()` values from 0 Hz to half the sample rate; the result of `forward`.
    [[nodiscard]] std::span<std::complex<float>> spectrum();

    void forward();  ///< samples -> spectrum; keeps the samples
    void backward(); ///< spectrum -> samples; destroys the spectrum

  private:
    struct Plans;
    std::unique_ptr<Plans> plans_;
};

} // namespace luft::signal
