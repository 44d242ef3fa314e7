// Formants of voices made from published tables come back, where pitch is low enough to show them.
#include "reference/formants.h"
#include "scenes/songs.h"
#include "signal/statistics.h"
#include "voice/formants.h"
#include "voice/hear.h"

#include <catch2/catch.hpp>

#include <cstdio>

using namespace luft;
using namespace luft::voice;

namespace {

constexpr SampleRate kRate{44100};

struct Wanted {
    std::string label;
    singer::Formants formants;
};

singer::Formants tract_of(const std::array<double, 5>& f, const std::array<double, 5>& bandwidth) {
    singer::Formants out;
    for (std::size_t i = 0; i < 5; ++i)
        out[i] = {Hertz(f[i]), Hertz(bandwidth[i])};
    return out;
}

/// All sung vowels of the table for one kind of voice.
std::vector<Wanted> sung(std::string_view voice) {
    std::vector<Wanted> out;
    for (const auto& v : reference::kSungVowels)
        if (v.voice == voice)
            out.push_back({std::string(voice) + " " + std::string(v.vowel), tract_of(v.f, v.bandwidth)});
    REQUIRE(out.size() == 5);
    return out;
}

/// Peterson & Barney's men, with Klatt's (1980) default bandwidths and a neutral tube's upper formants.
std::vector<Wanted> spoken() {
    std::vector<Wanted> out;
    for (const auto& v : reference::kPetersonBarneyMen)
        out.push_back(
            {"men " + std::string(v.ipa), tract_of({v.f1, v.f2, v.f3, 3500, 4500}, {50, 70, 110, 250, 200})});
    return out;
}

struct Found {
    Wanted wanted;
    std::optional<Hertz> f1, f2;
    double share = 0; ///< of the frames that have formants
};

/// Sings each vowel for 0.7 s at one pitch and hears it.
std::vector<Found> hear_vowels(const std::vector<Wanted>& vowels, Hertz pitch) {
    singer::Song song;
    singer::Phrase line;
    for (const Wanted& w : vowels) {
        line.events.emplace_back(
            singer::SungNote{.length = Seconds(0.7), .pitch = pitch_of(pitch), .formants = w.formants});
        line.events.emplace_back(singer::Rest{Seconds(0.2)});
    }
    song.phrases.push_back(line);
    const auto sounds = singer::render(song, {.voice = singer::VoiceType::tenor, .seed = 31}, kRate);
    singer::MemorySource source(sounds.samples, sounds.rate);
    const auto curves = hear(source, Setting::alone).curves;
    std::vector<Found> out;
    for (std::size_t i = 0; i < vowels.size(); ++i) {
        const double from = 0.9 * static_cast<double>(i) + 0.2;
        const Span steady{Seconds(from), Seconds(from + 0.4)};
        Found f{vowels[i], {}, {}, 0};
        const auto f1 = curves.f1.within(steady), f2 = curves.f2.within(steady);
        if (const auto m = signal::median(f1)) f.f1 = Hertz(*m);
        if (const auto m = signal::median(f2)) f.f2 = Hertz(*m);
        f.share = static_cast<double>(std::ranges::count_if(f1, [](float v) { return !std::isnan(v); })) /
                  static_cast<double>(f1.size());
        out.push_back(f);
    }
    return out;
}

struct Case {
    const char* voice;
    std::vector<double> pitches;
};
const std::vector<Case> kCases{{"bass", {87.3, 110, 146.8}},
                               {"tenor", {130.8, 164.8, 196}},
                               {"countertenor", {174.6, 196}},
                               {"alto", {174.6, 196}},
                               {"men", {98, 130.8, 196}}};

std::vector<Wanted> vowels_of(std::string_view voice) {
    return voice == "men" ? spoken() : sung(voice);
}

double off(std::optional<Hertz> found, Hertz wanted) {
    return found ? found->value() - wanted.value() : 9999;
}

} // namespace

TEST_CASE("figures: formants", "[.][figures]") {
    std::vector<double> f1_off, f2_off;
    std::printf("%-16s %6s %6s %7s %7s %7s %7s\n", "vowel", "f0", "share", "F1", "off", "F2", "off");
    for (const auto& c : kCases)
        for (const double hz : c.pitches)
            for (const Found& f : hear_vowels(vowels_of(c.voice), Hertz(hz))) {
                f1_off.push_back(std::abs(off(f.f1, f.wanted.formants[0].frequency)));
                f2_off.push_back(std::abs(off(f.f2, f.wanted.formants[1].frequency)));
                std::printf("%-16s %6.1f %6.2f %7.0f %+7.0f %7.0f %+7.0f\n", f.wanted.label.c_str(), hz,
                            f.share, f.wanted.formants[0].frequency.value(),
                            off(f.f1, f.wanted.formants[0].frequency), f.wanted.formants[1].frequency.value(),
                            off(f.f2, f.wanted.formants[1].frequency));
            }
    std::printf("median off: F1 %.0f, F2 %.0f Hz\n", *signal::median(f1_off), *signal::median(f2_off));
}

// Up to G3; F1 within 65 Hz and F2 within 110 Hz. Remeasuring by hand differs by 12 and 25 Hz in the median
// (Hillenbrand et al. 1995).
TEST_CASE("formants of published vowels come back at low pitches") {
    // Measured (see [figures]): F1 8 Hz and F2 8 Hz off in the median, 50 at most but for one [ɝ], whose F3
    // of 1690 Hz lies where the model has none: there F2 is 117 Hz off.
    std::vector<double> f1_off, f2_off;
    int second_missed = 0;
    for (const auto& c : kCases)
        for (const double hz : c.pitches)
            for (const Found& f : hear_vowels(vowels_of(c.voice), Hertz(hz))) {
                CAPTURE(f.wanted.label, hz);
                CHECK(f.share > 0.8);
                const double first = std::abs(off(f.f1, f.wanted.formants[0].frequency));
                const double second = std::abs(off(f.f2, f.wanted.formants[1].frequency));
                CHECK(first < 65);
                if (second >= 110) ++second_missed;
                f1_off.push_back(first);
                f2_off.push_back(second);
            }
    CHECK(f1_off.size() == 80);
    CHECK(second_missed <= 1);
    CHECK(*signal::median(f1_off) < 12);
    CHECK(*signal::median(f2_off) < 12);
}

TEST_CASE("formants are withheld above 400 Hz, where partials are too far apart to show them") {
    for (const double hz : {415.0, 523.3, 880.0})
        for (const Found& f : hear_vowels(sung("alto"), Hertz(hz))) {
            CAPTURE(f.wanted.label, hz);
            CHECK(f.share == 0);
        }
}
