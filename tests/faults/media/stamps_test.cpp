// Time stamps that run backwards, wrap, leap or are absurd.
#include "boxes.h"
#include "made.h"
#include "matroska.h"
#include "pack.h"
#include "trial.h"

#include <catch2/catch.hpp>

#include <limits>
#include <random>

using namespace luft::test;

namespace {

std::vector<Block> blocks(const std::function<std::uint64_t(int)>& cluster,
                          const std::function<std::int16_t(int)>& after) {
    std::vector<Block> all;
    for (int i = 0; i < 100; ++i)
        all.push_back({cluster(i), after(i), std::string(160, static_cast<char>(17 * i))});
    return all;
}

std::vector<Case> stamps() {
    const auto none = [](int) { return std::int16_t{0}; };
    const auto at = [](std::uint64_t start, std::int64_t step) {
        return [=](int i) { return start + static_cast<std::uint64_t>(step * i); };
    };
    constexpr std::uint64_t kHalf = 1ULL << 63;
    std::vector<Case> cases;
    const auto add = [&](const std::string& label, std::vector<Block> all, double rate = 8000,
                         std::uint64_t ticks = 1'000'000) {
        cases.push_back({label, [=] { return matroska(all, rate, ticks); }});
    };
    add("backwards", blocks(at(100'000, -10), none));
    add("before the start", blocks(at(0, 10), [](int) { return std::int16_t{-32768}; }));
    add("all the same", blocks(at(5, 0), none));
    add("near 2^63", blocks(at(kHalf - 500, 10), none));
    add("wrapping at 2^64", blocks(at(0 - 500ULL, 10), none));
    add("first 0, then 2^62",
        blocks([](int i) { return i < 50 ? 10ULL * static_cast<unsigned>(i) : 1ULL << 62; }, none));
    add("gaps of 29 minutes each", blocks(at(0, 1'740'000), none));
    add("to and fro over an hour", blocks([](int i) { return i % 2 ? 3'600'000ULL : 0ULL; }, none));
    add("ticks of 2^63 ns", blocks(at(0, 10), none), 8000, kHalf);
    add("ticks of 0 ns", blocks(at(0, 10), none), 8000, 0);
    add("a rate that is no number", blocks(at(0, 10), none), std::numeric_limits<double>::quiet_NaN());
    add("a rate without end", blocks(at(0, 10), none), std::numeric_limits<double>::infinity());
    add("a rate of -8000", blocks(at(0, 10), none), -8000);
    add("a rate of 1e-300", blocks(at(0, 10), none), 1e-300);
    add("a rate of 1", blocks(at(0, 10), none), 1);
    for (unsigned seed = 1; seed <= 20; ++seed) {
        std::mt19937_64 random(seed);
        std::vector<std::uint64_t> clusters(100);
        for (auto& c : clusters)
            c = random() >> (random() % 64);
        add("at random, seed " + std::to_string(seed),
            blocks([=](int i) { return clusters[static_cast<std::size_t>(i)]; },
                   [=](int i) { return static_cast<std::int16_t>(clusters[static_cast<std::size_t>(i)]); }));
    }
    return cases;
}

/// The steps of time in a movie file (stts, ctts, elst, mvhd, mdhd), absurd.
std::vector<Case> movie_times(const Made& file) {
    std::vector<Case> cases;
    const auto put = [&](const char* kind, std::size_t field, int count, std::uint64_t value) {
        for (const Box& box : boxes_of(file.bytes))
            if (box.kind == kind && field + static_cast<std::size_t>(count) <= box.size)
                cases.push_back({file.name + ": " + std::to_string(value) + " in byte " +
                                     std::to_string(field) + " of '" + kind + "' at " +
                                     std::to_string(box.at),
                                 [&file, at = box.at + field, count, value] {
                                     return std::string(file.bytes)
                                         .replace(at, static_cast<std::size_t>(count), big(value, count));
                                 }});
    };
    for (const std::uint64_t value : {0ULL, 1ULL, 0x7FFFFFFFULL, 0x80000000ULL, 0xFFFFFFFFULL}) {
        put("mvhd", 20, 4, value); // time scale
        put("mvhd", 24, 4, value); // duration
        put("mdhd", 20, 4, value);
        put("mdhd", 24, 4, value);
        put("stts", 20, 4, value); // step
        put("ctts", 20, 4, value); // offset
        put("elst", 16, 4, value); // length of the first edit
        put("elst", 20, 4, value); // its place in the media
        put("elst", 24, 4, value); // its speed
    }
    return cases;
}

} // namespace

TEST_CASE("time stamps that make no sense are taken or refused in bounded time and memory") {
    Trials trials(
        "Time stamps that run backwards, wrap, leap or are no numbers",
        "Matroska with 100 blocks at any 64-bit times and at random ones, movie files with absurd time "
        "scales, steps and edits");
    trials.give_some("a.mkv", stamps(), 3);
    const Made movie = made("a.mp4", true, "-c:v libx264 -bf 2 -c:a aac");
    trials.give_some("a.mp4", movie_times(movie), 2);
    WARN(trials.figures());
}
