#include "signal/fft.h"

#include <fftw3.h>

#include <mutex>

namespace luft::signal {
namespace {

// FFTW's planner is the one part of it that isn't safe to call from several threads.
std::mutex& planner() {
    static std::mutex mutex;
    return mutex;
}

struct FreeBuffer {
    void operator()(void* p) const { fftwf_free(p); }
};

} // namespace

struct RealFft::Plans {
    explicit Plans(std::size_t n)
        : size(n), time(static_cast<float*>(fftwf_malloc(n * sizeof(float)))),
          frequency(static_cast<fftwf_complex*>(fftwf_malloc((n / 2 + 1) * sizeof(fftwf_complex)))) {
        const std::lock_guard lock(planner());
        // FFTW_ESTIMATE: no timing runs, so the same machine code path every time and reproducible results.
        forward = fftwf_plan_dft_r2c_1d(static_cast<int>(n), time.get(), frequency.get(),
                                        FFTW_ESTIMATE | FFTW_PRESERVE_INPUT);
        backward = fftwf_plan_dft_c2r_1d(static_cast<int>(n), frequency.get(), time.get(), FFTW_ESTIMATE);
    }
    Plans(const Plans&) = delete;
    Plans& operator=(const Plans&) = delete;
    ~Plans() {
        const std::lock_guard lock(planner());
        fftwf_destroy_plan(forward);
        fftwf_destroy_plan(backward);
    }

    std::size_t size;
    std::unique_ptr<float, FreeBuffer> time;
    std::unique_ptr<fftwf_complex, FreeBuffer> frequency;
    fftwf_plan forward = nullptr;
    fftwf_plan backward = nullptr;
};

RealFft::RealFft(std::size_t size) : plans_(std::make_unique<Plans>(size)) {}
RealFft::RealFft(RealFft&&) noexcept = default;
RealFft& RealFft::operator=(RealFft&&) noexcept = default;
RealFft::~RealFft() = default;

std::size_t RealFft::size() const {
    return plans_->size;
}
std::span<float> RealFft::samples() {
    return {plans_->time.get(), plans_->size};
}
std::span<std::complex<float>> RealFft::spectrum() {
    // fftwf_complex is float[2], which std::complex<float> is laid out like ([complex.numbers]).
    return {reinterpret_cast<std::complex<float>*>(plans_->frequency.get()), plans_->size / 2 + 1};
}
void RealFft::forward() {
    fftwf_execute(plans_->forward);
}
void RealFft::backward() {
    fftwf_execute(plans_->backward);
}

} // namespace luft::signal
