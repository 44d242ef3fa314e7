// One channel at another rate, from any sample.
#include "tape/mono_tape.h"
#include "tools/memory_sound.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace luft;
using namespace luft::tape;

namespace {

/// A tone that glides, so that every moment is unlike the others.
double glide(double t) {
    return 0.5 * std::sin(2 * std::numbers::pi * (200 * t + 40 * t * t));
}

MonoTape tape_of(int from, int to, int channels) {
    std::vector<float> samples;
    for (int n = 0; n < 8 * from; ++n)
        for (int c = 0; c < channels; ++c)
            samples.push_back(static_cast<float>((channels == 1 ? 1
                                                  : c == 0      ? 1.2
                                                                : 0.8) *
                                                 glide(static_cast<double>(n) / from)));
    return {std::make_unique<test::MemorySound>(samples, SampleRate{from}, channels), SampleRate{to}};
}

/// The largest distance to the glide where 0.1 s are read from a place.
double worst(MonoTape& tape, std::int64_t from) {
    const int rate = tape.rate().per_second;
    std::vector<float> out(static_cast<std::size_t>(rate / 10));
    tape.read(from, out);
    double most = 0;
    for (std::size_t i = 0; i < out.size(); ++i)
        most = std::max(
            most, std::abs(out[i] - glide((static_cast<double>(from) + static_cast<double>(i)) / rate)));
    return most;
}

} // namespace

TEST_CASE("every sample stands at its time at any rate, from any place, forwards and back") {
    const auto [from, to] = GENERATE(std::pair{48000, 48000}, std::pair{44100, 48000},
                                     std::pair{48000, 44100}, std::pair{22050, 48000});
    const int channels = from == 48000 && to == 44100 ? 1 : 2;
    CAPTURE(from, to);
    MonoTape tape = tape_of(from, to, channels);
    for (const double t : {1.0, 1.1, 1.3, 6.00001, 3.0, 2.99, 0.5}) {
        CAPTURE(t);
        CHECK(worst(tape, std::llround(t * to)) < 0.002);
    }
}

TEST_CASE("before the start and behind the end there is silence") {
    MonoTape tape = tape_of(44100, 48000, 2);
    std::vector<float> out(4800, 1);
    tape.read(-10000, out);
    CHECK(std::ranges::all_of(out, [](float v) { return std::abs(v) < 1e-4F; }));
    tape.read(std::int64_t{9} * 48000, out);
    CHECK(std::ranges::all_of(out, [](float v) { return std::abs(v) < 1e-4F; }));
}
