#include "base/error.h"
#include "singer/random.h"
#include "singer/room.h"
#include "singer/source.h"
#include "singer/voices.h"
#include "singer_test/measure.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::singer;

// The reference implementation's output for this seed, as listed by Vigna's and Rosetta Code's test.
TEST_CASE("SplitMix64 gives its published numbers") {
    Random random(1234567);
    CHECK(random.next() == 6457827717110365317u);
    CHECK(random.next() == 3203168211198807973u);
    CHECK(random.next() == 9817491932198370423u);
    CHECK(random.next() == 4593380528125082431u);
    CHECK(random.next() == 16408922859458223821u);
}

TEST_CASE("Bell-shaped chance has mean 0 and deviation 1") {
    Random random(5);
    double sum = 0, square = 0;
    constexpr int kCount = 100000;
    for (int i = 0; i < kCount; ++i) {
        const double x = random.bell();
        sum += x, square += x * x;
    }
    CHECK(sum / kCount == Approx(0).margin(0.01));
    CHECK(square / kCount == Approx(1).margin(0.01));
}

// Klatt 1980, JASA 67, 971, worked out at 48 kHz for F 500, bandwidth 60.
TEST_CASE("A resonator has Klatt's coefficients") {
    Resonator r;
    r.tune({Hertz(500), Hertz(60)}, SampleRate{48000});
    CHECK(r.a == Approx(0.004280731).margin(5e-10));
    CHECK(r.b == Approx(1.987896049).margin(5e-10));
    CHECK(r.c == Approx(-0.992176780).margin(5e-10));
    CHECK(std::abs(r.response(Hertz(0), SampleRate{48000})) == Approx(1));
}

TEST_CASE("A resonator sounds as its response says") {
    constexpr SampleRate kRate{44100};
    Resonator r;
    r.tune({Hertz(700), Hertz(100)}, kRate);
    std::vector<float> out;
    for (int n = 0; n < 44100; ++n)
        out.push_back(static_cast<float>(r.run(std::sin(2 * M_PI * 900 * n / 44100.0))));
    CHECK(line(std::span(out).subspan(22050), kRate, Hertz(900)) ==
          Approx(std::abs(r.response(Hertz(900), kRate))).epsilon(1e-3));
}

// A uniform tube of 17.5 cm at 350 m/s rings at 500, 1500, 2500 Hz.
TEST_CASE("The neutral tract peaks where a tube does") {
    Tract tract(SampleRate{44100});
    tract.shape(neutral_formants());
    for (const double f : {500.0, 1500.0, 2500.0, 3500.0, 4500.0}) {
        CAPTURE(f);
        double best = 0, most = 0;
        for (double x = f - 200; x <= f + 200; x += 2)
            if (const double g = tract.gain(Hertz(x)); g > most) most = g, best = x;
        CHECK(best == Approx(f).margin(25));
    }
}

TEST_CASE("Vowels have the formants of the published tables") {
    // Peterson & Barney 1952, Table II.
    const auto men = spoken_formants(Speakers::men, "ɑ");
    CHECK(men[0].frequency == Hertz(730));
    CHECK(men[1].frequency == Hertz(1090));
    CHECK(men[2].frequency == Hertz(2440));
    const auto women = spoken_formants(Speakers::women, "i");
    CHECK(women[0].frequency == Hertz(310));
    CHECK(women[1].frequency == Hertz(2790));
    CHECK(women[2].frequency == Hertz(3310));
    CHECK_THROWS_AS(spoken_formants(Speakers::men, "y"), Error);
    // Csound manual, appendix on formant values.
    const auto tenor = sung_formants(VoiceType::tenor, Vowel::a);
    CHECK(tenor[0].frequency == Hertz(650));
    CHECK(tenor[4].frequency == Hertz(3250));
    CHECK(tenor[2].bandwidth == Hertz(120));
    CHECK(sung_formants(VoiceType::soprano, Vowel::u)[0].frequency == Hertz(325));
}

TEST_CASE("The pulse train keeps its pitch between samples and hardly aliases") {
    constexpr SampleRate kRate{44100};
    const Hertz f0(1130.7);
    const auto train = pulse_train(44100, kRate, Random(1), [&](Seconds) {
        return CycleShape{f0, 0.6, 0, 0};
    });
    const std::span<const float> x(train.flow);
    const double first = line(x, kRate, f0);
    CHECK(interval(f0, pitch_near(x.first(8000), kRate, f0)).value() == Approx(0).margin(2));
    // Nothing but harmonics: half-way between them lie only aliases.
    for (int k = 1; k < 18; ++k) {
        CAPTURE(k);
        CHECK(amplitude_level(line(x, kRate, f0 * (k + 0.41)) / first).value() < -65);
    }
}

// Reverberation time from the backward-integrated decay of an impulse (Schroeder 1965, JASA 37, 409; ISO
// 3382).
TEST_CASE("A room dies away in the time it was given") {
    constexpr SampleRate kRate{16000};
    for (const double decay : {0.5, 1.2}) {
        CAPTURE(decay);
        std::vector<float> dry(32000);
        for (int n = 0; n < 160; ++n) // a low tone, since high ones are meant to die sooner
            dry[static_cast<std::size_t>(n)] = static_cast<float>(std::sin(2 * M_PI * 200 * n / 16000.0));
        const auto wet = in_room(dry, kRate, {.decay = Seconds(decay), .floor = Decibels(-200)});
        std::vector<double> left(wet.size());
        double sum = 0;
        for (std::size_t n = wet.size(); n-- > 800;)
            left[n] = sum += double(wet[n]) * wet[n];
        const auto down = [&](double db) {
            for (std::size_t n = 800; n < left.size(); ++n)
                if (power_level(left[n] / left[800]).value() < db) return double(n) / 16000;
            return 0.0;
        };
        CHECK(3 * (down(-25) - down(-5)) == Approx(decay).epsilon(0.2));
    }
}
