#include "singer/voices.h"

#include "base/error.h"

#include <array>
#include <string>

namespace luft::singer {
namespace {

struct Row {
    std::array<double, 5> f, bw;
};

// Csound manual, appendix "Formant values": bass, tenor, countertenor, alto, soprano; a e i o u.
constexpr Row kSung[5][5] = {
    {{{600, 1040, 2250, 2450, 2750}, {60, 70, 110, 120, 130}},
     {{400, 1620, 2400, 2800, 3100}, {40, 80, 100, 120, 120}},
     {{250, 1750, 2600, 3050, 3340}, {60, 90, 100, 120, 120}},
     {{400, 750, 2400, 2600, 2900}, {40, 80, 100, 120, 120}},
     {{350, 600, 2400, 2675, 2950}, {40, 80, 100, 120, 120}}},
    {{{650, 1080, 2650, 2900, 3250}, {80, 90, 120, 130, 140}},
     {{400, 1700, 2600, 3200, 3580}, {70, 80, 100, 120, 120}},
     {{290, 1870, 2800, 3250, 3540}, {40, 90, 100, 120, 120}},
     {{400, 800, 2600, 2800, 3000}, {70, 80, 100, 130, 135}},
     {{350, 600, 2700, 2900, 3300}, {40, 60, 100, 120, 120}}},
    {{{660, 1120, 2750, 3000, 3350}, {80, 90, 120, 130, 140}},
     {{440, 1800, 2700, 3000, 3300}, {70, 80, 100, 120, 120}},
     {{270, 1850, 2900, 3350, 3590}, {40, 90, 100, 120, 120}},
     {{430, 820, 2700, 3000, 3300}, {40, 80, 100, 120, 120}},
     {{370, 630, 2750, 3000, 3400}, {40, 60, 100, 120, 120}}},
    {{{800, 1150, 2800, 3500, 4950}, {80, 90, 120, 130, 140}},
     {{400, 1600, 2700, 3300, 4950}, {60, 80, 120, 150, 200}},
     {{350, 1700, 2700, 3700, 4950}, {50, 100, 120, 150, 200}},
     {{450, 800, 2830, 3500, 4950}, {70, 80, 100, 130, 135}},
     {{325, 700, 2530, 3500, 4950}, {50, 60, 170, 180, 200}}},
    {{{800, 1150, 2900, 3900, 4950}, {80, 90, 120, 130, 140}},
     {{350, 2000, 2800, 3600, 4950}, {60, 100, 120, 150, 200}},
     {{270, 2140, 2950, 3900, 4950}, {60, 90, 100, 120, 120}},
     {{450, 800, 2830, 3800, 4950}, {40, 80, 100, 120, 120}},
     {{325, 700, 2700, 3800, 4950}, {50, 60, 170, 180, 200}}},
};

struct Spoken {
    std::string_view sign;
    std::array<double, 3> men, women;
};

// Peterson & Barney 1952, Table II.
constexpr std::array<Spoken, 10> kSpoken{{
    {"i", {270, 2290, 3010}, {310, 2790, 3310}},
    {"ɪ", {390, 1990, 2550}, {430, 2480, 3070}},
    {"ɛ", {530, 1840, 2480}, {610, 2330, 2990}},
    {"æ", {660, 1720, 2410}, {860, 2050, 2850}},
    {"ɑ", {730, 1090, 2440}, {850, 1220, 2810}},
    {"ɔ", {570, 840, 2410}, {590, 920, 2710}},
    {"ʊ", {440, 1020, 2240}, {470, 1160, 2680}},
    {"u", {300, 870, 2240}, {370, 950, 2670}},
    {"ʌ", {640, 1190, 2390}, {760, 1400, 2780}},
    {"ɝ", {490, 1350, 1690}, {500, 1640, 1960}},
}};

} // namespace

Formants sung_formants(VoiceType voice, Vowel vowel) {
    const Row& row = kSung[static_cast<int>(voice)][static_cast<int>(vowel)];
    Formants out;
    for (std::size_t i = 0; i < 5; ++i)
        out[i] = {Hertz(row.f[i]), Hertz(row.bw[i])};
    return out;
}

Formants spoken_formants(Speakers who, std::string_view sign) {
    for (const Spoken& s : kSpoken) {
        if (s.sign != sign) continue;
        const auto& f = who == Speakers::men ? s.men : s.women;
        const double k = who == Speakers::men ? 1 : 1.15;
        return {{{Hertz(f[0]), Hertz(50)},
                 {Hertz(f[1]), Hertz(70)},
                 {Hertz(f[2]), Hertz(110)},
                 {Hertz(3500 * k), Hertz(250)},
                 {Hertz(4500 * k), Hertz(200)}}};
    }
    throw Error(Fault::not_found, "No spoken vowel is written \"" + std::string(sign) + "\".");
}

Formants neutral_formants() {
    return {{{Hertz(500), Hertz(60)},
             {Hertz(1500), Hertz(90)},
             {Hertz(2500), Hertz(150)},
             {Hertz(3500), Hertz(200)},
             {Hertz(4500), Hertz(250)}}};
}

std::string_view ipa(Vowel vowel) {
    constexpr std::array<std::string_view, 5> kSigns{"a", "e", "i", "o", "u"};
    return kSigns[static_cast<std::size_t>(vowel)];
}

} // namespace luft::singer
