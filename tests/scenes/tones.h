// Plain test tones whose every property is known.
#pragma once

#include "base/units.h"
#include "singer/random.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <vector>

namespace luft::scenes {

inline std::size_t samples_in(Seconds t, SampleRate rate) {
    return static_cast<std::size_t>(std::llround(t.value() * rate.per_second));
}

inline std::vector<float> silence(Seconds length, SampleRate rate) {
    return std::vector<float>(samples_in(length, rate), 0.0F);
}

/// A sine whose phase starts at 0.
inline std::vector<float> sine(Hertz f, double amplitude, Seconds length, SampleRate rate,
                               double phase_degrees = 0) {
    std::vector<float> x(samples_in(length, rate));
    for (std::size_t i = 0; i < x.size(); ++i)
        x[i] = static_cast<float>(
            amplitude * std::sin(2 * std::numbers::pi * f.value() * static_cast<double>(i) / rate.per_second +
                                 phase_degrees * std::numbers::pi / 180));
    return x;
}

/// A tone of partials: `level(h)` is the amplitude of partial h at pitch `f0(t)`; partials from `top` on are
/// left out.
inline std::vector<float> partial_tone(const std::function<double(double)>& f0,
                                       const std::function<double(int)>& level, Seconds length,
                                       SampleRate rate, double top) {
    std::vector<float> x(samples_in(length, rate));
    double phase = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double f = f0(static_cast<double>(i) / rate.per_second);
        double y = 0;
        for (int h = 1; h * f < top; ++h)
            y += level(h) * std::cos(h * phase);
        x[i] = static_cast<float>(y);
        phase = std::fmod(phase + 2 * std::numbers::pi * f / rate.per_second, 2 * std::numbers::pi);
    }
    return x;
}

/// White noise of the given RMS.
inline std::vector<float> noise(double rms, Seconds length, SampleRate rate, std::uint64_t seed) {
    std::vector<float> x(samples_in(length, rate));
    singer::Random random(seed);
    for (float& v : x)
        v = static_cast<float>(rms * random.bell());
    return x;
}

inline void append(std::vector<float>& to, const std::vector<float>& more) {
    to.insert(to.end(), more.begin(), more.end());
}
inline void add(std::vector<float>& to, const std::vector<float>& more) {
    for (std::size_t i = 0; i < std::min(to.size(), more.size()); ++i)
        to[i] += more[i];
}

/// Linear fades of 10 ms at both ends, so that a tone doesn't click.
inline std::vector<float> faded(std::vector<float> x, SampleRate rate) {
    const std::size_t n = std::min(samples_in(Seconds(0.01), rate), x.size() / 2);
    for (std::size_t i = 0; i < n; ++i) {
        const float g = static_cast<float>(i) / static_cast<float>(n);
        x[i] *= g;
        x[x.size() - 1 - i] *= g;
    }
    return x;
}

} // namespace luft::scenes
