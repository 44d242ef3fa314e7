// Songs sung by the test voice, heard by the real ear, and aligned. Seeds from 911 on.
#include "compare/heard.h"
#include "signal/stretch.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

using enum singer::VoiceType;

singer::Song song_of(std::uint64_t seed) {
    return scenes::random_song({.voice = tenor, .seed = seed, .phrases = 6});
}

void check_met(const Performed& a, const Performed& b, int key, double share_of_pairs = 0.95) {
    const Alignment found = align(a.side, b.side);
    const Errors e = errors_of(a, b, found);
    CHECK(found.semitones == key);
    CHECK(e.lost == 0);
    CHECK(e.median_ms < 50);
    CHECK(e.right_pairs >= share_of_pairs);
    CHECK(e.wrong_pairs <= 0.05);
}

/// The same recording, heard after it was changed outside of us: every time is `slower` times what it was.
Performed warped(const singer::Song& song, double stretch, double other_rate) {
    const auto made = singer::render(song, {.voice = tenor, .seed = 5}, {44100});
    std::vector<float> samples = made.samples;
    if (stretch > 1) {
        signal::Stretcher stretcher(made.rate, 1, 1 / stretch);
        samples.clear();
        stretcher.process(made.samples, samples);
        stretcher.finish(samples);
    }
    // Played at another rate: faster and higher, as a tape is.
    singer::MemorySource source(samples, {static_cast<int>(44100 * other_rate)});
    Performed out;
    out.side = side_of(marks::listen(source));
    singer::Truth truth = made.truth;
    std::vector<int> ids;
    for (singer::TrueNote& n : truth.notes) {
        n.span = {n.span.start * (stretch / other_rate), n.span.end * (stretch / other_rate)};
        ids.push_back(static_cast<int>(ids.size()));
    }
    out.notes = placed(truth, ids, out.side);
    return out;
}

} // namespace

TEST_CASE("a recording slowed by Rubber Band, or played at another rate, is met within 50 ms") {
    const singer::Song song = song_of(915);
    const Performed a = warped(song, 1, 1);
    check_met(a, warped(song, 1.4, 1), 0);
    check_met(a, warped(song, 1, std::exp2(3.0 / 12)), 3);
    check_met(a, warped(song, 1.3, std::exp2(-4.0 / 12)), -4);
}

TEST_CASE("the ear's notes are met within 50 ms in every tempo, and pairs are the right ones") {
    const singer::Song song = song_of(911);
    const Performed a = sing_and_hear(song, {});
    for (const double speed : {0.7, 1.4}) {
        CAPTURE(speed);
        check_met(a, sing_and_hear(song, {.seed = 2, .speed = speed, .rubato = 0.1}), 0);
    }
}

TEST_CASE("another voice in another key and tuning is met within 50 ms") {
    const singer::Song song = song_of(912);
    const Performed a = sing_and_hear(song, {});
    check_met(a, sing_and_hear(song, {.voice = bass, .seed = 2, .rubato = 0.1, .semitones = -7}), -7);
    check_met(a, sing_and_hear(song, {.voice = soprano, .seed = 3, .rubato = 0.2, .semitones = 12}), 12);
    const Performed sharp =
        sing_and_hear(song, {.voice = alto, .seed = 4, .rubato = 0.1, .semitones = 5, .tuning = Hertz(446)});
    check_met(a, sharp, 5);
    CHECK(align(a.side, sharp.side).tuning.value() ==
          Approx(interval(Hertz(440), Hertz(446)).value()).margin(8));
}

TEST_CASE("lines cut and sung again are met within 50 ms by what the ear hears") {
    const singer::Song song = song_of(913);
    const Performed a = sing_and_hear(song, {});
    check_met(a,
              sing_and_hear(
                  song, {.voice = alto, .seed = 2, .rubato = 0.1, .semitones = 5, .phrases = {0, 1, 4, 5}}),
              5);
    check_met(a,
              sing_and_hear(song, {.voice = alto,
                                   .seed = 3,
                                   .rubato = 0.1,
                                   .semitones = 5,
                                   .phrases = {0, 1, 2, 3, 1, 2, 3, 4, 5}}),
              5);
}

TEST_CASE("a voice alone is met by one with a band within 50 ms") {
    const singer::Song song = song_of(914);
    check_met(sing_and_hear(song, {}),
              sing_and_hear(song, {.voice = alto, .seed = 2, .rubato = 0.1, .semitones = 5, .band = true}), 5,
              0.9);
}
