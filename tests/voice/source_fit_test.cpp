// Pulse and tract come back from partials that were made of them.
#include "singer/lf.h"
#include "singer/tract.h"
#include "singer/voices.h"
#include "voice/front.h"
#include "voice/pulse_shape.h"
#include "voice/source_fit.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace luft;
using namespace luft::voice;

namespace {

/// Partials of a pulse (the test singer's, solved on its own) in a tract, up to 5 kHz.
Partials partials_of(double rd, const singer::Formants& formants, Hertz f0) {
    const auto harmonics = singer::lf_harmonics(singer::lf_pulse(rd), 40);
    singer::Tract tract(kEarRate);
    tract.shape(formants);
    Partials p{f0, {}};
    for (std::size_t h = 0; h < 40 && static_cast<double>(h + 1) * f0.value() < 5000; ++h)
        p.levels.push_back(
            static_cast<float>(20 * std::log10(harmonics[h] * tract.gain(f0 * static_cast<double>(h + 1)))));
    return p;
}

} // namespace

TEST_CASE("levels of the pulse agree with an independent solution of the same model (Fant 1995)") {
    for (const double rd : {0.4, 0.7, 1.0, 1.5, 2.0, 2.6}) {
        CAPTURE(rd);
        const auto levels = pulse_levels(rd, 20);
        const auto harmonics = singer::lf_harmonics(singer::lf_pulse(rd), 20);
        for (std::size_t h = 1; h < 20; ++h)
            CHECK(levels[h] - levels[0] == Approx(20 * std::log10(harmonics[h] / harmonics[0])).margin(0.3));
    }
}

TEST_CASE("pulse and formants come back from the partials of low notes, as near as the fit says") {
    SourceFitter fitter(Decibels(60), 1.0);
    for (const auto vowel : {singer::Vowel::a, singer::Vowel::e, singer::Vowel::i, singer::Vowel::o})
        for (const double hz : {110.0, 165.0, 220.0})
            for (const double rd : {0.7, 1.0, 1.6, 2.1}) {
                CAPTURE(int(vowel), hz, rd);
                const auto formants = singer::sung_formants(singer::VoiceType::tenor, vowel);
                const auto fit = fitter.fit(partials_of(rd, formants, Hertz(hz)));
                REQUIRE(fit);
                CHECK(fit->pulse == Approx(rd).margin(0.1 + 1.5 * fit->pulse_spread));
                CHECK(fit->pulse_spread < 0.6);
                CHECK(std::abs(std::log2(fit->f1 / formants[0].frequency)) < 0.2);
                CHECK(std::abs(std::log2(fit->f2 / formants[1].frequency)) < 0.1);
            }
}

TEST_CASE("high notes leave the pulse open, and say so") {
    SourceFitter fitter(Decibels(60), 1.0);
    const auto formants = singer::sung_formants(singer::VoiceType::soprano, singer::Vowel::a);
    const auto low = fitter.fit(partials_of(1, formants, Hertz(220)));
    const auto high = fitter.fit(partials_of(1, formants, Hertz(800)));
    REQUIRE((low && high));
    CHECK(high->pulse_spread > 1.5 * low->pulse_spread);
    CHECK_FALSE(fitter.fit(partials_of(1, formants, Hertz(1400)))); // one partial under 2.6 kHz
}

TEST_CASE("a high note is fitted better once the singer's vowels are known") {
    SourceFitter fitter(Decibels(60), 1.0);
    const auto formants = singer::sung_formants(singer::VoiceType::tenor, singer::Vowel::a);
    const Partials high = partials_of(2.1, formants, Hertz(440));
    const auto before = fitter.fit(high);
    for (int k = 0; k < 60; ++k) {
        const auto fit = fitter.fit(partials_of(1, formants, Hertz(150 + k)));
        REQUIRE(fit);
        if (SourceFitter::is_certain(*fit)) fitter.remember(*fit);
    }
    fitter.expect_remembered();
    const auto after = fitter.fit(high);
    REQUIRE((before && after));
    const auto off = [&](const SourceFit& f) { return std::abs(std::log2(f.f1 / formants[0].frequency)); };
    CHECK(off(*after) < off(*before));
    CHECK(off(*after) < 0.15);
    CHECK(after->pulse > before->pulse);
}
