#include "voice/loudness.h"

#include "base/error.h"

#include <ebur128.h>

#include <algorithm>
#include <cmath>

namespace luft::voice {
namespace {

constexpr double kAbsoluteGate = -70;
constexpr std::size_t kWindowFrames = 40; // 400 ms of 10 ms hops
constexpr unsigned long kHopMilliseconds = 10;

struct Destroy {
    void operator()(ebur128_state* s) const { ebur128_destroy(&s); }
};

int channel_of(ChannelRole role, std::size_t channels) {
    switch (role) {
    case ChannelRole::left:
        return EBUR128_LEFT;
    case ChannelRole::right:
        return EBUR128_RIGHT;
    case ChannelRole::centre:
        return EBUR128_CENTER;
    case ChannelRole::surround_left:
        return EBUR128_LEFT_SURROUND;
    case ChannelRole::surround_right:
        return EBUR128_RIGHT_SURROUND;
    case ChannelRole::low_frequency:
        return EBUR128_UNUSED;
    case ChannelRole::other:
        return channels <= 2 ? EBUR128_CENTER : EBUR128_UNUSED;
    }
    return EBUR128_UNUSED;
}

// BS.1770-4, eq. 2: loudness = -0.691 + 10 log10 of the weighted channels' mean square.
constexpr double kOffset = -0.691;
double mean_square(double lufs) {
    return std::pow(10.0, (lufs - kOffset) / 10);
}
double loudness_of(double mean_square) {
    return kOffset + 10 * std::log10(mean_square);
}

std::optional<Lufs> reading(double lufs) {
    if (!std::isfinite(lufs) || lufs < kAbsoluteGate) return std::nullopt;
    return Lufs(lufs);
}

} // namespace

struct LoudnessMeter::State {
    std::unique_ptr<ebur128_state, Destroy> meter;
    std::size_t channels = 0;
    std::int64_t taken = 0; ///< native sample frames so far
    double rate = 0;
    std::vector<float> hops; ///< K-weighted mean square of each 10 ms hop

    [[nodiscard]] std::int64_t hop_end(std::size_t hop) const {
        return std::llround(static_cast<double>(hop + 1) * rate * kHop.value());
    }
};

LoudnessMeter::LoudnessMeter(const AudioFormat& format) : state_(std::make_unique<State>()) {
    state_->channels = format.channels.size();
    state_->rate = format.rate.per_second;
    state_->meter.reset(ebur128_init(
        static_cast<unsigned>(format.channels.size()), static_cast<unsigned long>(format.rate.per_second),
        EBUR128_MODE_I | EBUR128_MODE_LRA | EBUR128_MODE_S | EBUR128_MODE_TRUE_PEAK));
    if (!state_->meter)
        throw Error(Fault::unsupported, "Loudness can't be measured for this sample rate or channel count.");
    for (std::size_t c = 0; c < format.channels.size(); ++c)
        ebur128_set_channel(state_->meter.get(), static_cast<unsigned>(c),
                            format.channels.size() == 1
                                ? EBUR128_LEFT
                                : channel_of(format.channels[c], format.channels.size()));
}
LoudnessMeter::LoudnessMeter(LoudnessMeter&&) noexcept = default;
LoudnessMeter& LoudnessMeter::operator=(LoudnessMeter&&) noexcept = default;
LoudnessMeter::~LoudnessMeter() = default;

void LoudnessMeter::add(const AudioBlock& block) {
    State& s = *state_;
    std::size_t done = 0;
    const std::size_t frames = block.samples.size() / s.channels;
    while (done < frames) {
        const std::int64_t end = s.hop_end(s.hops.size());
        const auto now = static_cast<std::size_t>(
            std::min<std::int64_t>(end - s.taken, static_cast<std::int64_t>(frames - done)));
        if (ebur128_add_frames_float(s.meter.get(), block.samples.data() + done * s.channels, now) !=
            EBUR128_SUCCESS)
            throw Error(Fault::internal, "Loudness measurement ran out of memory.");
        done += now;
        s.taken += static_cast<std::int64_t>(now);
        if (s.taken == end) {
            // Ten of the library's milliseconds a hop cost a fortieth of its 400 ms window.
            double lufs = 0;
            ebur128_loudness_window(s.meter.get(), kHopMilliseconds, &lufs);
            s.hops.push_back(std::isfinite(lufs) ? static_cast<float>(mean_square(lufs)) : 0.0F);
        }
    }
}

Loudness LoudnessMeter::summary() const {
    Loudness result;
    ebur128_state* meter = state_->meter.get();
    double value = 0;
    if (ebur128_loudness_global(meter, &value) == EBUR128_SUCCESS) result.integrated = reading(value);
    if (result.integrated && ebur128_loudness_range(meter, &value) == EBUR128_SUCCESS)
        result.range = LoudnessUnits(value);
    double peak = 0;
    for (std::size_t c = 0; c < state_->channels; ++c)
        if (ebur128_true_peak(meter, static_cast<unsigned>(c), &value) == EBUR128_SUCCESS)
            peak = std::max(peak, value);
    if (peak > 0) result.true_peak = amplitude_level(peak);
    return result;
}

std::optional<Lufs> LoudnessMeter::short_term() const {
    double value = 0;
    if (ebur128_loudness_shortterm(state_->meter.get(), &value) != EBUR128_SUCCESS) return std::nullopt;
    return reading(value);
}

std::optional<Lufs> LoudnessMeter::momentary_now() const {
    double value = 0;
    if (ebur128_loudness_momentary(state_->meter.get(), &value) != EBUR128_SUCCESS) return std::nullopt;
    return reading(value);
}

Curve<Lufs> LoudnessMeter::momentary(std::size_t frames) const {
    // The window that is centred on frame i ends 200 ms later, with hop i + 19.
    Curve<Lufs> curve(frames);
    const auto& hops = state_->hops;
    for (std::size_t i = kWindowFrames / 2; i < frames && i + kWindowFrames / 2 <= hops.size(); ++i) {
        double sum = 0;
        for (std::size_t k = i - kWindowFrames / 2; k < i + kWindowFrames / 2; ++k)
            sum += hops[k];
        if (sum > 0) curve.set(i, reading(loudness_of(sum / kWindowFrames)));
    }
    return curve;
}

} // namespace luft::voice
