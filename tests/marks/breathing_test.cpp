// Breaths and phrases of songs sung with quick breaths inside their lines, dry, over noise and in rooms.
#include "marks/heard.h"
#include "singer/room.h"

#include <catch2/catch.hpp>

#include <cstdio>

using namespace luft;
using namespace luft::marks;
using reference::Score;

namespace {

enum class Place { dry, noisy, room };

/// A song by chance with a quick breath in the middle of every second line.
singer::Song with_quick_breaths(const scenes::SongPlan& plan) {
    singer::Song song = scenes::random_song(plan);
    singer::Random random(plan.seed);
    for (std::size_t p = 0; p < song.phrases.size(); p += 2) {
        auto& events = song.phrases[p].events;
        const auto middle = events.begin() + static_cast<std::ptrdiff_t>(events.size() / 2);
        events.insert(middle, singer::Breath{.length = Seconds(0.18 + 0.08 * random.uniform()),
                                             .level = Decibels(-25 - 6 * random.uniform())});
    }
    return song;
}

/// Hum and hiss far over those of a quiet room.
void add_noise(std::vector<float>& x, double rate, std::uint64_t seed) {
    singer::Random random(seed);
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double t = static_cast<double>(i) / rate;
        x[i] += static_cast<float>(amplitude_of(Decibels(-56)) * random.bell() +
                                   amplitude_of(Decibels(-54)) * std::sin(2 * std::numbers::pi * 50 * t));
    }
}

struct Figures {
    Score breaths, starts, ends;
    int inside = 0, inside_said = 0;
    std::array<int, 2> sure{}; ///< breaths of 0.8 and more: right, all
};

void add_song(Figures& f, std::uint64_t seed, Place place) {
    const scenes::SongPlan plan{
        .voice = static_cast<singer::VoiceType>(seed % 5), .seed = seed, .phrases = 4};
    const auto sung =
        singer::render(with_quick_breaths(plan), {.voice = plan.voice, .seed = seed + 7}, {44100});
    std::vector<float> x = sung.samples;
    if (place == Place::noisy) add_noise(x, 44100, seed);
    if (place == Place::room)
        x = singer::in_room(x, sung.rate, {.decay = Seconds(1.1), .wet = Decibels(-12)});
    const Analysis said = test::listen_to(x, sung.rate, Accompaniment::find_out);
    CHECK(said.setting == voice::Setting::alone);

    const auto& truth = sung.truth;
    const auto found = test::match_spans(truth.breaths, said.breaths);
    f.breaths += reference::score_of(found, said.breaths.size());
    for (std::size_t t = 0; t < found.size(); ++t) {
        if (found[t] < 0) continue;
        const Breath& b = said.breaths[static_cast<std::size_t>(found[t])];
        f.sure[0] += b.confidence.value >= 0.8 ? 1 : 0;
        f.inside += truth.breaths[t].inside_phrase ? 1 : 0;
        f.inside_said += truth.breaths[t].inside_phrase && b.inside_phrase ? 1 : 0;
    }
    f.sure[1] += static_cast<int>(
        std::ranges::count_if(said.breaths, [](const Breath& b) { return b.confidence.value >= 0.8; }));
    const auto near = [&](auto edge) {
        return reference::score_of(reference::match(truth.phrases.size(), said.phrases.size(),
                                                    [&](std::size_t t, std::size_t s) {
                                                        return std::abs(edge(truth.phrases[t].span).value() -
                                                                        edge(said.phrases[s].span).value()) <=
                                                               0.3;
                                                    }),
                                   said.phrases.size());
    };
    f.starts += near([](Span s) { return s.start; });
    f.ends += near([](Span s) { return s.end; });
}

Figures measure(Place place) {
    Figures f;
    for (const std::uint64_t seed : {340u, 341u, 342u, 343u, 344u})
        add_song(f, seed, place);
    return f;
}

void print(const char* place, const Figures& f) {
    std::printf(
        "%-6s breaths F %.3f, phrase starts F %.3f, ends F %.3f, inside a line %d of %d said so, sure "
        "ones right %d of %d\n",
        place, f.breaths.f(), f.starts.f(), f.ends.f(), f.inside_said, f.inside, f.sure[0], f.sure[1]);
}

} // namespace

// Pinned with margin under what was measured on songs 340 to 344 (see [figures]).
TEST_CASE("breaths and lines are found when nothing else sounds, quick breaths inside lines included") {
    const Figures f = measure(Place::dry);
    CHECK(f.breaths.f() >= 0.96); // measured 1, as the next three
    CHECK(f.starts.f() >= 0.96);
    CHECK(f.ends.f() >= 0.96);
    CHECK(f.inside_said >= 0.8 * f.inside);
    CHECK(f.sure[0] >= 0.9 * f.sure[1]);
}

TEST_CASE("breaths and lines are found over hum and hiss") {
    const Figures f = measure(Place::noisy);
    CHECK(f.breaths.f() >= 0.95); // measured 1, as the next two
    CHECK(f.starts.f() >= 0.95);
    CHECK(f.ends.f() >= 0.95);
    CHECK(f.sure[0] >= 0.9 * f.sure[1]);
}

TEST_CASE("breaths and lines are found in a room") {
    const Figures f = measure(Place::room);
    CHECK(f.breaths.f() >= 0.86); // measured 0.929
    CHECK(f.starts.f() >= 0.93);  // 1
    CHECK(f.ends.f() >= 0.93);    // 1
    CHECK(f.sure[0] >= 0.9 * f.sure[1]);
}

TEST_CASE("figures: breaths and lines of songs", "[.][figures]") {
    print("dry", measure(Place::dry));
    print("noisy", measure(Place::noisy));
    print("room", measure(Place::room));
}
