#include "bench/pairs/warp.h"

#include "singer/random.h"

#include <rubberband/RubberBandStretcher.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace luft::bench {
namespace {

using RubberBand::RubberBandStretcher;

constexpr Seconds kKnot{0.25};
constexpr std::size_t kBlock = 4096;

template <class Speed>
TimeMap map_of(Seconds length, Speed speed) {
    TimeMap map{{{Seconds(0), Seconds(0)}}};
    while (map.knots.back().from < length) {
        const TimeMap::Knot last = map.knots.back();
        map.knots.push_back({last.from + kKnot, last.to + kKnot / speed(last.from + kKnot / 2)});
    }
    return map;
}

std::size_t frame(Seconds t, SampleRate rate) {
    return static_cast<std::size_t>(std::llround(t.value() * rate.per_second));
}

/// The samples as one row a channel.
std::vector<std::vector<float>> planes_of(std::span<const float> samples, std::size_t channels) {
    std::vector<std::vector<float>> planes(channels);
    for (std::size_t i = 0; i < samples.size(); ++i)
        planes[i % channels].push_back(samples[i]);
    return planes;
}

/// Hands all of it over in blocks: to study, then to process.
template <class Take>
void in_blocks(const std::vector<std::vector<float>>& planes, Take take) {
    const std::size_t frames = planes.front().size();
    std::vector<const float*> at(planes.size());
    for (std::size_t i = 0; i < frames; i += kBlock) {
        for (std::size_t c = 0; c < planes.size(); ++c)
            at[c] = planes[c].data() + i;
        take(at.data(), std::min(kBlock, frames - i), i + kBlock >= frames);
    }
}

} // namespace

Seconds TimeMap::operator()(Seconds from) const {
    auto next = std::ranges::upper_bound(knots, from, {}, &Knot::from);
    next = std::clamp(next, knots.begin() + 1, knots.end() - 1);
    const Knot &a = *(next - 1), &b = *next;
    return a.to + (b.to - a.to) * ((from - a.from) / (b.from - a.from));
}

TimeMap steady(Seconds length, double speed) {
    return map_of(length, [speed](Seconds) { return speed; });
}

TimeMap leaning(Seconds length, double from, double to) {
    return map_of(length, [=](Seconds t) { return from + (to - from) * (t / length); });
}

TimeMap rubato(Seconds length, double depth, std::uint64_t seed) {
    singer::Random random(seed * 911 + 17);
    const double slow = 6 + 3 * random.uniform(), quick = 4 + 2 * random.uniform(), at = random.uniform(),
                 there = random.uniform();
    return map_of(length, [=](Seconds t) {
        const double turn = 2 * std::numbers::pi;
        return std::exp(depth * (0.6 * std::sin(turn * (t.value() / slow + at)) +
                                 0.4 * std::sin(turn * (t.value() / quick + there))));
    });
}

std::vector<float> warped(std::span<const float> samples, int channels, SampleRate rate, const TimeMap& map,
                          int semitones) {
    const auto count = static_cast<std::size_t>(channels);
    const auto planes = planes_of(samples, count);
    const std::size_t frames = planes.front().size();
    const Seconds length(static_cast<double>(frames) / rate.per_second);
    RubberBandStretcher library(
        static_cast<std::size_t>(rate.per_second), count,
        RubberBandStretcher::OptionProcessOffline | RubberBandStretcher::OptionEngineFiner |
            RubberBandStretcher::OptionFormantPreserved | RubberBandStretcher::OptionThreadingNever,
        map(length) / length, std::exp2(semitones / 12.0));
    std::map<std::size_t, std::size_t> keys;
    for (const TimeMap::Knot& k : map.knots)
        if (k.from > Seconds(0) && k.from < length) keys[frame(k.from, rate)] = frame(k.to, rate);
    library.setExpectedInputDuration(frames);
    library.setMaxProcessSize(kBlock);
    in_blocks(planes, [&](const float* const* at, std::size_t n, bool last) { library.study(at, n, last); });
    library.setKeyFrameMap(keys);
    std::vector<float> out;
    std::vector<std::vector<float>> got(count, std::vector<float>(kBlock));
    std::vector<float*> into;
    for (auto& plane : got)
        into.push_back(plane.data());
    in_blocks(planes, [&](const float* const* at, std::size_t n, bool last) {
        library.process(at, n, last);
        while (library.available() > 0) {
            const std::size_t ready = library.retrieve(
                into.data(), std::min(kBlock, static_cast<std::size_t>(library.available())));
            for (std::size_t i = 0; i < ready; ++i)
                for (std::size_t c = 0; c < count; ++c)
                    out.push_back(got[c][i]);
        }
    });
    return out;
}

Seconds map_error(const TimeMap& map, int semitones) {
    constexpr SampleRate kRate{44100};
    const Seconds length = map.knots.back().from;
    std::vector<float> clicks(frame(length, kRate));
    std::vector<Seconds> at;
    for (Seconds t(0.6); t < length - Seconds(0.5); t += Seconds(0.5)) {
        at.push_back(t);
        for (std::size_t i = 0; i < 40; ++i)
            clicks[frame(t, kRate) + i] = i % 2 == 0 ? 0.8F : -0.8F;
    }
    const auto out = warped(clicks, 1, kRate, map, semitones);
    Seconds worst{0};
    for (const Seconds t : at) {
        // The loudest sample within 0.1 s of its place.
        const std::size_t centre = frame(map(t), kRate), reach = frame(Seconds(0.1), kRate);
        std::size_t best = centre > reach ? centre - reach : 0;
        for (std::size_t i = best; i < std::min(out.size(), centre + reach); ++i)
            if (std::abs(out[i]) > std::abs(out[best])) best = i;
        const Seconds found(static_cast<double>(best) / kRate.per_second);
        worst = std::max(worst, Seconds(std::abs((found - map(t)).value())));
    }
    return worst;
}

} // namespace luft::bench
