#include "base/error.h"
#include "singer/singer.h"
#include "singer_test/measure.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::singer;
using marks::OffsetKind;
using marks::OnsetKind;
using marks::Register;

namespace {

constexpr SampleRate kRate{44100};

SungNote note(double seconds, double pitch, Vowel vowel = Vowel::a, Start start = Start::balanced) {
    SungNote n;
    n.length = Seconds(seconds), n.pitch = MidiPitch(pitch), n.vowel = vowel, n.start = start;
    return n;
}

Rendition sing(std::vector<Event> events, Singer singer = {}) {
    Song song;
    song.phrases.push_back({std::move(events), "test"});
    return render(song, singer, kRate);
}

Singer steady() {
    Singer s;
    s.jitter = s.shimmer = 0;
    s.wander = Cents(0);
    return s;
}

/// Time from 10 to 90 % of the envelope's plateau, after the voice's start.
double rise_time(const Rendition& r, const TrueNote& n) {
    std::vector<double> level; // RMS over one period, every millisecond
    const double period = 1 / frequency_of(n.pitch).value();
    for (double t = n.span.start.value() - 0.05; t < n.span.start.value() + 0.4; t += 0.001)
        level.push_back(
            amplitude_of(rms(cut(r.samples, r.rate, {Seconds(t - period), Seconds(t + period)}))));
    const double top = level.back();
    std::size_t high = 0;
    while (level[high] < 0.9 * top)
        ++high;
    std::size_t low = high;
    while (low > 0 && level[low] > 0.1 * top)
        --low;
    return static_cast<double>(high - low) / 1000;
}

} // namespace

TEST_CASE("The pitch in the sound is the pitch in the truth") {
    auto wide = note(1.5, 62);
    wide.vibrato = VibratoPlan{.rate = Hertz(5), .extent = Cents(80)};
    auto low = note(0.8, 45, Vowel::o, Start::legato);
    low.scoop = Cents(200), low.drift = Cents(-60), low.off = Cents(30);
    const auto r = sing({wide, note(0.6, 69, Vowel::i, Start::legato), low}, steady());
    int checked = 0;
    for (double t = 0.1; t < 2.8; t += 0.01) {
        const auto f0 = r.truth.f0.at(Seconds(t));
        REQUIRE(f0);
        const double half = 1.6 / f0->value(); // as short as can be, since pitch moves
        if (r.samples.size() < static_cast<std::size_t>((t + half) * kRate.per_second)) break;
        const auto here = cut(r.samples, kRate, {Seconds(t - half), Seconds(t + half)});
        const auto before = r.truth.f0.at(Seconds(t - 0.02)), after = r.truth.f0.at(Seconds(t + 0.02));
        const bool gliding = !before || !after || std::abs(interval(*before, *after).value()) > 40;
        if (gliding) continue; // a window with a glide in it has no one pitch
        CAPTURE(t, f0->value());
        CHECK(interval(*f0, pitch_near(here, kRate, *f0)).value() == Approx(0).margin(15));
        ++checked;
    }
    CHECK(checked > 150);
    CHECK(r.truth.notes[2].pitch.value() == Approx(45.3));
}

TEST_CASE("The same seed sings the same samples, another seed does not") {
    Singer other;
    other.seed = 2;
    const std::vector<Event> song{singer::Breath{}, note(0.5, 57)};
    CHECK(sing(song).samples == sing(song).samples);
    CHECK(sing(song).samples != sing(song, other).samples);
}

TEST_CASE("Every vowel of every voice comes out at the level asked for") {
    for (const auto voice : {VoiceType::bass, VoiceType::tenor, VoiceType::alto, VoiceType::soprano})
        for (const auto vowel : {Vowel::a, Vowel::e, Vowel::i, Vowel::o, Vowel::u}) {
            CAPTURE(int(voice), int(vowel));
            Singer s = steady();
            s.voice = voice;
            auto n = note(0.8, voice == VoiceType::bass ? 45 : 64, vowel);
            n.level = Decibels(-4);
            const auto r = sing({n}, s);
            CHECK(rms(cut(r.samples, kRate, {Seconds(0.3), Seconds(0.6)})).value() ==
                  Approx(-24).margin(0.7));
            CHECK(r.truth.notes[0].level.value() == Approx(-24).margin(0.7));
        }
}

// Rise times from 10 to 90 %: hard 10-30 ms, balanced 30-90 ms, breathy over 90 ms (design values).
TEST_CASE("Onsets rise as their kind says, and come with silence or noise ahead") {
    const auto rise = [](Start start) {
        const auto r = sing({Rest{Seconds(0.3)}, note(1, 57, Vowel::a, start)}, steady());
        return rise_time(r, r.truth.notes[0]);
    };
    CHECK(rise(Start::glottal) < 0.030);
    CHECK(rise(Start::balanced) > 0.030);
    CHECK(rise(Start::balanced) < 0.090);
    CHECK(rise(Start::breathy) > 0.090);

    const auto breathy = sing({Rest{Seconds(0.3)}, note(1, 57, Vowel::a, Start::breathy)});
    const Seconds start = breathy.truth.notes[0].span.start;
    CHECK((start - Seconds(0.3)).value() == Approx(0.13).margin(0.03));
    const auto ahead = cut(breathy.samples, kRate, {start - Seconds(0.05), start});
    CHECK(rms(ahead).value() > -45);
    CHECK(rms(ahead).value() < -30);
    const auto glottal = sing({Rest{Seconds(0.3)}, note(1, 57, Vowel::a, Start::glottal)});
    const Seconds hard = glottal.truth.notes[0].span.start;
    CHECK(rms(cut(glottal.samples, kRate, {hard - Seconds(0.05), hard - Seconds(0.005)})).value() < -80);
    CHECK(breathy.truth.notes[0].onset == OnsetKind::breathy);
    CHECK(glottal.truth.notes[0].onset == OnsetKind::glottal);
}

TEST_CASE("Offsets are clean, breathy or trailing") {
    const auto end_with = [](OffsetKind kind) {
        auto n = note(1.2, 57);
        n.end = kind;
        return sing({n, Rest{Seconds(0.4)}}, steady());
    };
    const auto level_at = [](const Rendition& r, double t) {
        return rms(cut(r.samples, kRate, {Seconds(t), Seconds(t + 0.04)})).value();
    };
    const auto clean = end_with(OffsetKind::clean);
    CHECK(level_at(clean, 1.08) > -22);
    CHECK(level_at(clean, 1.21) < -80);
    const auto breathy = end_with(OffsetKind::breathy);
    const double after = breathy.truth.notes[0].span.end.value();
    CHECK(level_at(breathy, after + 0.02) > -48);
    CHECK(level_at(breathy, 1.25) < -75);
    const auto trailing = end_with(OffsetKind::trailing);
    CHECK(level_at(trailing, 1.0) < -29);
    const auto middle = trailing.truth.f0.at(Seconds(0.5)), last = trailing.truth.f0.at(Seconds(1.13));
    REQUIRE((middle && last));
    CHECK(interval(*middle, *last).value() < -20);
}

TEST_CASE("Breaths, phrases and switches stand in the truth where they were put") {
    auto up = note(0.6, 67, Vowel::o, Start::legato);
    up.sung_in = Register::head;
    auto back = note(0.6, 55);
    Song song;
    song.phrases.push_back({{Rest{Seconds(0.2)}, singer::Breath{Seconds(0.3)}, note(0.6, 60), up,
                             singer::Breath{Seconds(0.25), Decibels(-32)}, back},
                            "one"});
    song.phrases.push_back({{singer::Breath{.length = Seconds(0.3), .silent = true}, note(0.5, 57)}, "two"});
    const auto r = render(song, {}, kRate);
    REQUIRE(r.truth.breaths.size() == 3);
    CHECK(r.truth.breaths[0].span.start.value() == Approx(0.2));
    CHECK_FALSE(r.truth.breaths[0].inside_phrase);
    CHECK(r.truth.breaths[1].inside_phrase);
    CHECK(r.truth.breaths[1].span.start.value() == Approx(1.7));
    CHECK(rms(cut(r.samples, kRate, r.truth.breaths[1].span)).value() == Approx(-52).margin(0.5));
    CHECK_FALSE(r.truth.breaths[2].heard);
    CHECK(rms(cut(r.samples, kRate, {Seconds(2.57), Seconds(2.83)})).value() < -100);
    REQUIRE(r.truth.phrases.size() == 2);
    CHECK(r.truth.phrases[0].span.start.value() == Approx(0.5).margin(0.02));
    CHECK(r.truth.phrases[0].span.end.value() == Approx(2.55).margin(0.02));
    REQUIRE(r.truth.switches.size() == 2);
    CHECK(r.truth.switches[0].time.value() == Approx(1.1));
    CHECK(r.truth.switches[0].joined);
    CHECK(r.truth.switches[1].to == Register::chest);
    CHECK_FALSE(r.truth.switches[1].joined);
}

TEST_CASE("Head register has a stronger fundamental than chest register") {
    const auto h1h2 = [](Register sung_in) {
        auto n = note(1, 64);
        n.sung_in = sung_in;
        const auto r = sing({n}, steady());
        const auto x = cut(r.samples, kRate, {Seconds(0.3), Seconds(0.9)});
        const Hertz f0 = frequency_of(MidiPitch(64));
        return amplitude_level(line(x, kRate, f0) / line(x, kRate, f0 * 2)).value();
    };
    CHECK(h1h2(Register::head) - h1h2(Register::chest) > 6);
}

// The long-term spectrum, filled by a sliding pitch, must peak at the table's formants (Csound manual).
TEST_CASE("Formants are in the sound") {
    Singer s = steady();
    s.voice = VoiceType::bass;
    s.rd_chest = 0.3; // the flattest source
    auto n = note(4, 40, Vowel::e);
    n.drift = Cents(700);
    const auto r = sing({n}, s);
    const auto peak = [&](double from, double to) {
        double best = 0, most = 0;
        for (double f = from; f <= to; f += 10) {
            double power = 0;
            for (double t = 0.2; t < 3.8; t += 0.1)
                power +=
                    std::norm(line(cut(r.samples, kRate, {Seconds(t), Seconds(t + 0.02)}), kRate, Hertz(f)));
            if (power > most) most = power, best = f;
        }
        return best;
    };
    CHECK(peak(250, 700) == Approx(400).epsilon(0.1));
    CHECK(peak(1200, 2000) == Approx(1620).epsilon(0.05));
    CHECK(peak(2200, 2600) == Approx(2400).epsilon(0.05));
}

TEST_CASE("A song that can't be sung is refused") {
    CHECK_THROWS_AS(sing({note(-1, 60)}), Error);
    Song song;
    song.phrases.push_back({{note(1, 60)}, ""});
    CHECK_THROWS_AS(render(song, {}, SampleRate{8000}), Error);
    CHECK(render(Song{}, {}, kRate).truth.notes.empty());
}

TEST_CASE("It sings at any usual rate") {
    Song song;
    song.phrases.push_back({{note(0.6, 57)}, ""});
    for (const int rate : {16000, 22050, 48000, 96000}) {
        CAPTURE(rate);
        const auto r = render(song, steady(), SampleRate{rate});
        const auto x = cut(r.samples, r.rate, {Seconds(0.3), Seconds(0.4)});
        CHECK(interval(Hertz(220), pitch_near(x, r.rate, Hertz(220))).value() == Approx(0).margin(3));
        CHECK(rms(x).value() == Approx(-20).margin(0.7));
    }
}
