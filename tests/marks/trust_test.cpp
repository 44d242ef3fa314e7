// Confidence among instruments.
#include "marks/heard.h"
#include "marks/trust.h"
#include "scenes/small_band.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::marks;

TEST_CASE("a confidence is worth what lies between the points around it, and never more than the last") {
    constexpr std::array<Worth, 3> kPoints{{{0.4, 0.1}, {0.8, 0.5}, {0.9, 0.8}}};
    CHECK(worth_of({0.2}, kPoints).value == Approx(0.1));
    CHECK(worth_of({0.6}, kPoints).value == Approx(0.3));
    CHECK(worth_of({0.85}, kPoints).value == Approx(0.65));
    CHECK(worth_of({0.98}, kPoints).value == Approx(0.8));
}

TEST_CASE("more confidence stays more, and less than 0.5 never becomes more than it was") {
    Analysis a;
    a.setting = voice::Setting::accompanied;
    for (int k = 0; k <= 100; ++k) {
        a.notes.emplace_back().confidence = {k / 100.0};
        a.phrases.emplace_back().confidence = {k / 100.0};
        a.breaths.emplace_back().confidence = {k / 100.0};
    }
    set_confidence_right(a);
    for (std::size_t k = 1; k <= 100; ++k) {
        CAPTURE(k);
        CHECK(a.notes[k].confidence >= a.notes[k - 1].confidence);
        CHECK(a.phrases[k].confidence >= a.phrases[k - 1].confidence);
        CHECK(a.breaths[k].confidence >= a.breaths[k - 1].confidence);
    }
    CHECK(a.notes[50].confidence.value < 0.5);
    CHECK(a.phrases[50].confidence.value < 0.5);
    CHECK(a.breaths[50].confidence.value <= 0.5);
    CHECK(a.phrases[100].confidence.value > 0.7);
}

TEST_CASE("what was found in a voice alone keeps its confidence") {
    Analysis a;
    a.setting = voice::Setting::alone;
    a.notes.emplace_back().confidence = {0.6};
    a.phrases.emplace_back().confidence = {0.7};
    a.breaths.emplace_back().confidence = {0.8};
    set_confidence_right(a);
    CHECK(a.notes[0].confidence.value == 0.6);
    CHECK(a.phrases[0].confidence.value == 0.7);
    CHECK(a.breaths[0].confidence.value == 0.8);
}

TEST_CASE("over a loud band phrases claim no more than they keep") {
    double claimed = 0, right = 0, count = 0;
    for (const std::uint64_t seed : {711U, 712U, 713U}) {
        const auto sung = scenes::sing({.voice = singer::VoiceType::alto, .seed = seed, .phrases = 4});
        const auto said =
            test::listen_to(singer::mix(sung.samples, scenes::small_band(sung, {.drums = true}, seed),
                                        Decibels(-3), sung.rate),
                            sung.rate, Accompaniment::accompanied, 2);
        for (const Phrase& p : said.phrases) {
            ++count, claimed += p.confidence.value;
            right += std::ranges::any_of(sung.truth.phrases, [&](const auto& t) {
                return std::abs((t.span.start - p.span.start).value()) < 0.3 &&
                       std::abs((t.span.end - p.span.end).value()) < 0.3;
            });
        }
    }
    REQUIRE(count > 6);
    CAPTURE(claimed / count, right / count);
    CHECK(claimed / count < right / count + 0.15);
}
