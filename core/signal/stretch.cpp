#include "signal/stretch.h"

#include <rubberband/RubberBandStretcher.h>

#include <algorithm>
#include <cmath>

namespace luft::signal {
namespace {

using RubberBand::RubberBandStretcher;

constexpr std::size_t kBlock = 1024; // samples of one channel handed over at a time

// The finer engine is the one made for voices.
constexpr auto kOptions = RubberBandStretcher::OptionProcessRealTime |
                          RubberBandStretcher::OptionEngineFiner | RubberBandStretcher::OptionThreadingNever;

} // namespace

struct Stretcher::State {
    State(SampleRate rate, int count, double at)
        : channels(static_cast<std::size_t>(count)), speed(at),
          library(static_cast<std::size_t>(rate.per_second), channels, kOptions, 1 / at, 1),
          planes(channels, std::vector<float>(kBlock)), pointers(channels) {
        library.setMaxProcessSize(kBlock);
        surplus = library.getStartDelay();
        const std::vector<float> silence(kBlock * channels);
        std::vector<float> nothing;
        for (std::size_t left = library.getPreferredStartPad(); left > 0;) {
            const std::size_t n = std::min(left, kBlock);
            put(std::span(silence).first(n * channels), false, nothing);
            left -= n;
        }
    }

    void put(std::span<const float> in, bool last, std::vector<float>& out) {
        const std::size_t n = in.size() / channels;
        for (std::size_t c = 0; c < channels; ++c) {
            for (std::size_t i = 0; i < n; ++i)
                planes[c][i] = in[i * channels + c];
            pointers[c] = planes[c].data();
        }
        library.process(pointers.data(), n, last);
        take(out);
    }

    void take(std::vector<float>& out) {
        for (int ready = library.available(); ready > 0; ready = library.available()) {
            const std::size_t n = std::min(static_cast<std::size_t>(ready), kBlock);
            for (std::size_t c = 0; c < channels; ++c)
                pointers[c] = planes[c].data();
            const std::size_t got = library.retrieve(pointers.data(), n);
            if (got == 0) return;
            const std::size_t dropped = std::min(surplus, got);
            surplus -= dropped;
            made += got - dropped;
            for (std::size_t i = dropped; i < got; ++i)
                for (std::size_t c = 0; c < channels; ++c)
                    out.push_back(planes[c][i]);
        }
    }

    std::size_t channels;
    double speed;
    RubberBandStretcher library;
    std::vector<std::vector<float>> planes;
    std::vector<float*> pointers;
    std::size_t surplus = 0; ///< of the start delay, still to be dropped
    std::size_t taken = 0;   ///< samples of one channel in, and out
    std::size_t made = 0;
};

Stretcher::Stretcher(SampleRate rate, int channels, double speed)
    : state_(std::make_unique<State>(rate, channels, std::clamp(speed, kSlowest, 1.0))) {}
Stretcher::Stretcher(Stretcher&&) noexcept = default;
Stretcher& Stretcher::operator=(Stretcher&&) noexcept = default;
Stretcher::~Stretcher() = default;

void Stretcher::process(std::span<const float> in, std::vector<float>& out) {
    for (std::size_t i = 0; i < in.size(); i += kBlock * state_->channels)
        state_->put(in.subspan(i, std::min(kBlock * state_->channels, in.size() - i)), false, out);
    state_->taken += in.size() / state_->channels;
}

void Stretcher::finish(std::vector<float>& out) {
    const auto whole =
        static_cast<std::size_t>(std::llround(static_cast<double>(state_->taken) / state_->speed));
    state_->put({}, true, out);
    // The library's end is ragged by a block or two.
    const std::size_t channels = state_->channels;
    if (state_->made > whole)
        out.resize(out.size() - std::min(out.size(), (state_->made - whole) * channels));
    else
        out.resize(out.size() + (whole - state_->made) * channels);
}

} // namespace luft::signal
