// What is done to the sound on its way out, measured on what comes out.
#include "desk/play/engine.h"
#include "desk_play/material.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace luft;
using namespace luft::desk;
using namespace luft::desk::test;
using namespace luft::literals;

namespace {

Engine engine_of(const std::string& bytes) {
    return Engine(media::open_playable_sound(source_of(bytes)()));
}

struct Played {
    std::vector<float> frames;
    Course course;
};

/// So many seconds out, in chunks.
void play_on(Engine& engine, Played& played, double seconds, const Settings& settings) {
    const auto end = played.frames.size() + 2 * static_cast<std::size_t>(seconds * kRate);
    while (played.frames.size() < end) {
        const auto chunk =
            engine.next(std::min<std::size_t>(961, (end - played.frames.size()) / 2), settings);
        if (chunk.frames.empty()) break;
        played.frames.insert(played.frames.end(), chunk.frames.begin(), chunk.frames.end());
        for (const Stretch& stretch : chunk.course)
            played.course.add(stretch);
        REQUIRE(played.course.end() == static_cast<std::int64_t>(played.frames.size() / 2));
    }
}

Played play(const std::string& bytes, Seconds from, double seconds, const Settings& settings) {
    Engine engine = engine_of(bytes);
    engine.begin(from, settings);
    Played played;
    play_on(engine, played, seconds, settings);
    return played;
}

std::span<const float> between(const std::vector<float>& x, double from, double to) {
    const auto first = static_cast<std::size_t>(from * kRate);
    return std::span(x).subspan(first, std::min(static_cast<std::size_t>(to * kRate), x.size()) - first);
}

} // namespace

TEST_CASE("at speed and volume 1 the samples go through unchanged, to the last") {
    const auto whole = samples(5, 2, glide);
    const Played played = play(wav(5, 2, glide), 3_s, 10, {});
    CHECK(played.frames == std::vector<float>(whole.begin() + 2 * 3 * kRate, whole.end()));
    CHECK(played.course.at(0) == 3_s);
    CHECK(played.course.at(kRate).value() == Approx(4));
    CHECK(played.course.at(9 * kRate).value() == Approx(5));
}

TEST_CASE("at a slower speed it lasts longer in proportion, at the same pitch") {
    const double speed = GENERATE(0.25, 0.5, 0.9);
    CAPTURE(speed);
    const Played played = play(wav(3, 2, steady), 1_s, 20, {.speed = speed});
    CHECK(static_cast<double>(played.frames.size()) / 2 / kRate == Approx(2 / speed).epsilon(0.01));
    CHECK(frequency(between(channel(played.frames), 0.2, 1.9)) == Approx(220).epsilon(0.005));
    CHECK(played.course.at(kRate).value() == Approx(1 + speed));
}

TEST_CASE("a click at half speed sounds when the course says so") {
    const auto click = [](double t, int) { return std::abs(t - 2.0) < 0.5 / kRate ? 0.9 : 0.0; };
    const Played played = play(wav(4, 1, click), 1.5_s, 2, {.speed = 0.5});
    const auto left = channel(played.frames);
    const auto peak = std::max_element(left.begin(), left.end(),
                                       [](float a, float b) { return std::abs(a) < std::abs(b); });
    CHECK(played.course.at(peak - left.begin()).value() == Approx(2).margin(0.020));
}

TEST_CASE("a loop repeats with the period of its span, without gap and click") {
    const double speed = GENERATE(1.0, 0.5);
    CAPTURE(speed);
    // 153.7 periods of 220 Hz: where the loop turns back, the phase leaps.
    const Span loop{1.003_s, 1.7017_s};
    const Played played = play(wav(3, 1, steady), 0.9_s, 4, {.speed = speed, .loop = loop});
    REQUIRE(played.frames.size() == 8 * kRate);
    const auto left = channel(played.frames);
    const auto period = static_cast<std::size_t>(std::lround(loop.length().value() * kRate / speed));
    const auto first = static_cast<std::size_t>(0.103 * kRate / speed);
    if (speed == 1)
        for (std::size_t i = first + 300; i + period < left.size();
             ++i) // 300: the fade is in later rounds only
            REQUIRE(left[i] == left[i + ((i - first) % period < 240 ? 0 : period)]);
    const auto near_seam = [&](std::size_t rounds, int off) {
        return played.course.at(static_cast<std::int64_t>(first + rounds * period) + off).value();
    };
    CHECK(near_seam(1, -48) == Approx(1.7017).margin(0.002));
    CHECK(near_seam(1, 48) == Approx(1.003).margin(0.002));
    CHECK(near_seam(2, 48) == Approx(1.003).margin(0.002));
    // A 220 Hz tone at 0.5 climbs 0.0144 a sample; a seam cut hard would leap by up to 1.
    CHECK(steepest(left) < 0.02);
    for (double t = 0.2; t + 0.02 < 4; t += 0.01) // two opposite phases may cancel half-way through a fade
        CHECK(rms(between(left, t, t + 0.02)) > 0.2);
}

TEST_CASE("a loop that has been played from its start isn't read again, and is left at the right place") {
    class Counting final : public media::PlayableSound {
      public:
        explicit Counting(int& jumps)
            : inner_(media::open_playable_sound(source_of(wav(4, 2, glide))())), jumps_(jumps) {}
        [[nodiscard]] const AudioFormat& format() const override { return inner_->format(); }
        [[nodiscard]] std::optional<AudioBlock> read() override { return inner_->read(); }
        void rewind() override { inner_->rewind(); }
        [[nodiscard]] std::optional<Seconds> expected_duration() const override { return {}; }
        void go_to(std::int64_t sample) override {
            ++jumps_;
            inner_->go_to(sample);
        }

      private:
        std::unique_ptr<media::PlayableSound> inner_;
        int& jumps_;
    };
    int jumps = 0;
    Engine engine(std::make_unique<Counting>(jumps));
    Settings settings{.loop = Span{1_s, 1.5_s}};
    engine.begin(0.9_s, settings);
    Played played;
    play_on(engine, played, 2.25, settings); // to 1.5, 1 to 1.5 (read again), 1 to 1.5, 1 to 1.5, 1 to 1.15
    CHECK(jumps == 2);
    settings.loop.reset();
    play_on(engine, played, 0.5, settings); // 1.15 to 1.65
    const auto whole = samples(4, 2, glide);
    const auto is_at = [&](double out, double media, double length) {
        const auto first = played.frames.begin() + 2 * std::lround(out * kRate);
        return std::equal(first, first + 2 * std::lround(length * kRate),
                          whole.begin() + 2 * std::lround(media * kRate));
    };
    CHECK(is_at(0, 0.9, 0.6));
    CHECK(is_at(0.61, 1.01, 0.49));
    CHECK(is_at(1.11, 1.01, 0.49));
    CHECK(is_at(1.61, 1.01, 0.49));
    CHECK(is_at(2.11, 1.01, 0.64));
    CHECK(played.course.at(std::llround(2.7 * kRate)).value() == Approx(1.6));
}

TEST_CASE("a loop round the sound's end, behind it, and one that is too short") {
    const std::string bytes = wav(2, 1, steady);
    CHECK(play(bytes, 1.5_s, 3, {.loop = Span{1.5_s, 2.4_s}}).frames.size() == 6 * kRate);
    CHECK(play(bytes, 1.5_s, 3, {.loop = Span{5_s, 6_s}}).frames.size() == kRate);
    CHECK(play(bytes, 9_s, 3, {}).frames.empty());
    const Played shortest = play(bytes, 1_s, 1, {.loop = Span{1_s, 1_s}});
    CHECK(shortest.course.at(static_cast<std::int64_t>(0.049 * kRate)).value() ==
          Approx(1.049).margin(0.001));
    CHECK(shortest.course.at(static_cast<std::int64_t>(0.051 * kRate)).value() ==
          Approx(1.001).margin(0.001));
}

TEST_CASE("a change of speed, volume and loop on the way neither clicks nor loses the place") {
    Engine engine = engine_of(wav(8, 2, steady));
    Settings settings;
    engine.begin(1_s, settings);
    Played played;
    play_on(engine, played, 1, settings);
    settings.speed = 0.5;
    play_on(engine, played, 1, settings);
    settings.speed = 0.25;
    play_on(engine, played, 1, settings);
    settings.speed = 1;
    play_on(engine, played, 1, settings);
    settings.volume = 0.25;
    play_on(engine, played, 1, settings);
    CHECK(played.course.at(kRate).value() == Approx(2).margin(0.001));
    CHECK(played.course.at(2 * kRate).value() == Approx(2.5).margin(0.001));
    CHECK(played.course.at(3 * kRate).value() == Approx(2.75).margin(0.001));
    CHECK(played.course.at(4 * kRate).value() == Approx(3.75).margin(0.001));
    const auto left = channel(played.frames);
    CHECK(steepest(left) < 0.02);
    CHECK(rms(between(left, 4.2, 4.9)) == Approx(0.25 * 0.5 / std::sqrt(2)).epsilon(0.001));
    CHECK(rms(between(left, 3.3, 3.9)) == Approx(0.5 / std::sqrt(2)).epsilon(0.001));
    settings.loop = Span{1_s, 2_s}; // left behind long ago: its start comes next
    play_on(engine, played, 0.5, settings);
    CHECK(played.course.at(static_cast<std::int64_t>(5.1 * kRate)).value() == Approx(1.1).margin(0.001));
}

TEST_CASE("volume is a factor, and 0 is silence") {
    const auto whole = samples(1, 2, glide);
    const Played half = play(wav(1, 2, glide), 0_s, 1, {.volume = 0.5});
    REQUIRE(half.frames.size() == whole.size());
    for (std::size_t i = 0; i < whole.size(); i += 101)
        REQUIRE(half.frames[i] == Approx(whole[i] / 2).margin(1e-6));
    CHECK(rms(play(wav(1, 2, glide), 0_s, 1, {.volume = 0}).frames) == 0);
}

TEST_CASE("the reference tone has its pitch at any speed, its level, and comes and goes without a click") {
    const double speed = GENERATE(1.0, 0.5);
    CAPTURE(speed);
    const auto silence = [](double, int) { return 0.0; };
    const auto tone = std::make_shared<const ToneAt>([](Seconds t) -> std::optional<Hertz> {
        if (t < 1.2_s || t >= 1.8_s) return std::nullopt;
        return t < 1.5_s ? Hertz(330) : Hertz(440);
    });
    const Played played = play(wav(3, 2, silence), 1_s, 1 / speed, {.speed = speed, .tone = tone});
    const auto left = channel(played.frames);
    CHECK(rms(between(left, 0.01, 0.19 / speed)) == 0);
    CHECK(frequency(between(left, 0.22 / speed, 0.49 / speed)) == Approx(330).epsilon(0.002));
    CHECK(frequency(between(left, 0.52 / speed, 0.79 / speed)) == Approx(440).epsilon(0.002));
    CHECK(amplitude_level(rms(between(left, 0.25 / speed, 0.45 / speed))).value() == Approx(-26).margin(0.3));
    CHECK(rms(between(left, 0.82 / speed, 0.99 / speed)) == 0);
    CHECK(steepest(left) < 0.02); // partials of 0.06, 0.03 and 0.01 climb 0.010 a sample at 440 Hz
    CHECK(channel(played.frames, 1) == left);
}
