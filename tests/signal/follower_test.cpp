// Bursts of tone whose tempo changes at each, and where they come out.
#include "signal/follower.h"
#include "signal/statistics.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <random>

using namespace luft;
using namespace luft::signal;
using std::numbers::pi;

namespace {

constexpr int kRate = 44100;

/// Thirty bursts of 0.2 to 0.7 s, the clock changed by chance at the start of each.
struct Bursts {
    std::vector<float> samples;
    std::vector<Knot> knots; ///< one at the start of each, between the first and the last
    double pitch = 1;        ///< of all
};

Bursts bursts(double ratio, unsigned seed, double spread = 0.25) {
    std::mt19937 random(seed);
    std::normal_distribution<double> bell;
    std::uniform_real_distribution<double> any(0, 1);
    Bursts out;
    double in = 0.3, place = 0.3 * ratio;
    out.knots = {{0, 0}};
    out.samples.resize(21 * kRate);
    for (int i = 0; i < 30; ++i) {
        out.knots.push_back({in * kRate, place * kRate});
        const double length = 0.25 + 0.5 * any(random), hertz = 150 * std::exp2(1.5 * any(random));
        const auto first = static_cast<std::size_t>(in * kRate);
        const auto count = static_cast<std::size_t>((length - 0.08) * kRate);
        for (std::size_t n = 0; n < count && first + n < out.samples.size(); ++n) {
            const double rise = static_cast<double>(n) / (0.003 * kRate),
                         fall = static_cast<double>(count - n) / (0.02 * kRate);
            double y = 0;
            for (int h = 1; h <= 12; ++h)
                y += std::sin(2 * pi * hertz * h * static_cast<double>(n) / kRate) / h;
            out.samples[first + n] = static_cast<float>(0.2 * std::min({1.0, rise, fall}) * y);
        }
        in += length;
        place += length * ratio * std::exp(spread * bell(random));
    }
    out.knots.push_back({(in + 0.5) * kRate, (place + 0.5 * ratio) * kRate});
    return out;
}

/// What comes out from a place of the output on, in blocks of a length that divides nothing.
std::vector<float> followed(const Bursts& b, double from = 0, double pitch = 1) {
    Follower follower({kRate}, b.knots, from, pitch);
    const auto wanted = static_cast<std::size_t>(b.knots.back().out - from);
    std::vector<float> out, block(777);
    for (std::int64_t at = follower.first(); out.size() < wanted; at += 777) {
        for (std::int64_t n = 0; n < 777; ++n) {
            const bool inside = at + n >= 0 && at + n < static_cast<std::int64_t>(b.samples.size());
            block[static_cast<std::size_t>(n)] = inside ? b.samples[static_cast<std::size_t>(at + n)] : 0;
        }
        follower.process(block, out);
    }
    out.resize(wanted);
    return out;
}

/// RMS of 2 ms around a sample.
double level(const std::vector<float>& x, double at) {
    double power = 0;
    for (std::int64_t n = std::llround(at) - kRate / 1000; n < std::llround(at) + kRate / 1000; ++n)
        if (n >= 0 && n < static_cast<std::int64_t>(x.size())) {
            const double v = x[static_cast<std::size_t>(n)];
            power += v * v;
        }
    return std::sqrt(power / (kRate / 500.0));
}

/// How late the burst at a knot begins, in ms: where it has risen half-way from the gap before it.
double lateness(const std::vector<float>& x, double knot, double ratio) {
    constexpr double kStep = kRate / 4000.0;
    double top = 0, low = knot, least = 1e9;
    for (double at = knot; at < knot + 0.12 * kRate; at += kStep)
        top = std::max(top, level(x, at));
    for (double at = knot - 0.08 * std::min(ratio, 1.0) * kRate; at < knot + 0.06 * kRate; at += kStep)
        if (const double l = level(x, at); l < least) least = l, low = at;
    double at = low;
    while (at < knot + 0.15 * kRate && level(x, at) < (least + top) / 2)
        at += kStep;
    return (at - knot) / kRate * 1000;
}

struct Error {
    double median = 0, median_size = 0, p95 = 0;
};

Error errors(const Bursts& b, const std::vector<float>& x, double ratio) {
    std::vector<double> late, size;
    for (std::size_t i = 1; i + 1 < b.knots.size(); ++i) {
        late.push_back(lateness(x, b.knots[i].out, ratio));
        size.push_back(std::abs(late.back()));
    }
    return {median(std::span<const double>(late)).value(), median(std::span<const double>(size)).value(),
            quantile(std::span<const double>(size), 0.95).value()};
}

} // namespace

TEST_CASE("bursts come out where the path has them, though the tempo changes at each") {
    const double ratio = GENERATE(0.5, 1.0, 2.0);
    CAPTURE(ratio);
    const Bursts b = bursts(ratio, 21);
    const Error e = errors(b, followed(b), ratio);
    CHECK(e.median_size < 5);
    CHECK(e.p95 < 12);
}

TEST_CASE("in another key bursts come out where the path has them") {
    const double semitones = GENERATE(-12.0, -5.0, 7.0, 12.0);
    CAPTURE(semitones);
    const Bursts b = bursts(1, 22);
    const Error e = errors(b, followed(b, 0, std::exp2(semitones / 12)), 1);
    CHECK(e.median_size < 12); // an octave lower, frames are longer
    CHECK(e.p95 < 20);
}

TEST_CASE("begun in the midst, bursts come out where they do from the start") {
    const Bursts b = bursts(1.2, 23);
    const double from = b.knots[10].out + 1234.5;
    const auto whole = followed(b), part = followed(b, from);
    for (std::size_t i = 11; i < 20; ++i) {
        const double there = lateness(part, b.knots[i].out - std::floor(from), 1.2);
        CHECK(std::abs(there - lateness(whole, b.knots[i].out, 1.2)) < 6);
    }
    // There at once, and as loud as in the whole.
    const auto rms = [](std::span<const float> x) {
        double power = 0;
        for (const float v : x)
            power += v * v;
        return std::sqrt(power / static_cast<double>(x.size()));
    };
    const auto first = static_cast<std::size_t>(from);
    CHECK(rms(std::span(part).first(kRate / 50)) ==
          Approx(rms(std::span(whole).subspan(first, kRate / 50))).epsilon(0.25));
}

TEST_CASE("figures: how well bursts keep their places", "[.][figures][follow]") {
    const auto show = [](double ratio, double semitones) {
        const Bursts b = bursts(ratio, 31);
        const Error e = errors(b, followed(b, 0, std::exp2(semitones / 12)), ratio);
        std::printf(
            "out per in %.2f, %+3.0f semitones: median %+5.1f ms, of sizes %4.1f, 95 %% within %5.1f\n",
            ratio, semitones, e.median, e.median_size, e.p95);
    };
    for (const double ratio : {0.25, 0.5, 0.7, 1.0, 1.4, 2.0, 4.0})
        show(ratio, 0);
    for (const double semitones : {-12, -7, -3, 3, 7, 12})
        show(1, semitones);
}
