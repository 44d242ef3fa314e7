#include "signal/resampler.h"

#include "base/error.h"

#include <soxr.h>

#include <string>

namespace luft::signal {
namespace {

struct Delete {
    void operator()(soxr_t s) const { soxr_delete(s); }
};

} // namespace

struct Resampler::State {
    double ratio = 1; ///< output over input
    bool same = false;
    std::unique_ptr<::soxr, Delete> converter;

    void run(const float* in, std::size_t count, std::vector<float>& out) {
        const std::size_t room = static_cast<std::size_t>(static_cast<double>(count) * ratio) + 8192;
        std::size_t used = 0, made = 0;
        do {
            const std::size_t old = out.size();
            out.resize(old + room);
            std::size_t taken = 0;
            if (soxr_process(converter.get(), in ? in + used : nullptr, count - used, &taken,
                             out.data() + old, room, &made))
                throw Error(Fault::internal, "The sample rate conversion failed.");
            out.resize(old + made);
            used += taken;
        } while (used < count || (in == nullptr && made == room));
    }
};

Resampler::Resampler(SampleRate from, SampleRate to) : state_(std::make_unique<State>()) {
    state_->ratio = static_cast<double>(to.per_second) / from.per_second;
    state_->same = from == to;
    if (state_->same) return;
    const soxr_quality_spec_t quality =
        soxr_quality_spec(SOXR_MQ, 0); // 16 bits of precision; the ear needs no more
    soxr_error_t failure = nullptr;
    state_->converter.reset(
        soxr_create(from.per_second, to.per_second, 1, &failure, nullptr, &quality, nullptr));
    if (failure != nullptr)
        throw Error(Fault::unsupported,
                    "A sample rate of " + std::to_string(from.per_second) + " Hz can't be converted.");
}
Resampler::Resampler(Resampler&&) noexcept = default;
Resampler& Resampler::operator=(Resampler&&) noexcept = default;
Resampler::~Resampler() = default;

void Resampler::process(std::span<const float> in, std::vector<float>& out) {
    if (in.empty()) return;
    if (state_->same)
        out.insert(out.end(), in.begin(), in.end());
    else
        state_->run(in.data(), in.size(), out);
}

void Resampler::finish(std::vector<float>& out) {
    if (!state_->same) state_->run(nullptr, 0, out);
}

} // namespace luft::signal
