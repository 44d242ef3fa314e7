// The committed recordings of the sample project against what their program makes today.
#include "base/bytes.h"
#include "make/make_sample.h"
#include "make/scene.h"
#include "make/sound.h"
#include "make/truth_json.h"
#include "media/media.h"
#include "singer/render.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>

using namespace luft;
using namespace luft::test;
namespace fs = std::filesystem;

namespace {

const fs::path kCommitted = LUFT_SAMPLE_PROJECT;

std::vector<float> sound_in(const fs::path& movie) {
    const auto source = media::open_sound(open_file(movie));
    REQUIRE(source->format().rate == sample::kRate);
    REQUIRE(source->format().channels.size() == 2);
    std::vector<float> out;
    while (const auto block = source->read())
        out.insert(out.end(), block->samples.begin(), block->samples.end());
    return out;
}

/// How far the difference lies under the first sound.
Decibels difference(const std::vector<float>& a, const std::vector<float>& b) {
    double power = 0, rest = 0;
    for (std::size_t n = 0; n < std::min(a.size(), b.size()); ++n) {
        const double d = double(a[n]) - double(b[n]);
        power += double(a[n]) * a[n], rest += d * d;
    }
    return power_level(rest / power);
}

/// Mean difference of two pictures, of 255.
double difference(const media::Picture& a, const media::Picture& b) {
    REQUIRE(a.rgb.size() == b.rgb.size());
    double sum = 0;
    for (std::size_t k = 0; k < a.rgb.size(); ++k)
        sum += std::abs(int(a.rgb[k]) - int(b.rgb[k]));
    return sum / static_cast<double>(a.rgb.size());
}

/// Same structure and words, numbers within `margin`.
void check_alike(const nlohmann::json& a, const nlohmann::json& b, double margin, const std::string& where) {
    INFO(where);
    REQUIRE(a.is_number() == b.is_number());
    if (a.is_number()) {
        REQUIRE(a.get<double>() == Approx(b.get<double>()).margin(margin));
        return;
    }
    REQUIRE(a.size() == b.size());
    if (!a.is_structured()) {
        REQUIRE(a == b);
        return;
    }
    for (auto x = a.begin(), y = b.begin(); x != a.end(); ++x, ++y)
        check_alike(*x, *y, margin, where + (a.is_object() ? "/" + x.key() : ""));
}

} // namespace

// Bit for bit with the same encoder libraries; another version of them may choose other bits, so then the
// sound that comes out must lie 30 dB under the difference, and the pictures within 3 of 255 on average.
TEST_CASE("The second performance can be made again") {
    const Folder made;
    const auto p = sample::second_performance();
    sample::make_performance(p, made.path());
    check_alike(nlohmann::json::parse(read_all(made / sample::truth_file(p))),
                nlohmann::json::parse(read_all(kCommitted / sample::truth_file(p))), 0.11, "truth");
    const fs::path now = made / sample::movie_file(p), then = kCommitted / sample::movie_file(p);
    if (read_all(now) == read_all(then)) {
        SUCCEED("the same bytes");
        return;
    }
    WARN("The encoder chose other bits than when the recording was made; comparing sound and pictures.");
    CHECK(difference(sound_in(now), sound_in(then)).value() < -30);
    const auto a = media::open_pictures(open_file(now)), b = media::open_pictures(open_file(then));
    for (const double t : {1.0, 12.5, 30.0, 54.0})
        CHECK(difference(a->at(Seconds(t)), b->at(Seconds(t))) < 3);
}

TEST_CASE("The recordings hold what their truth says, at its times") {
    for (const auto& p : {sample::first_performance(), sample::second_performance()}) {
        CAPTURE(p.name);
        const fs::path movie = kCommitted / sample::movie_file(p);
        const auto sound = sample::sound_of(p);
        // A shift by one sample at 10 kHz, or a wrong delay of the encoder, would spoil this at once.
        CHECK(difference(sound.samples, sound_in(movie)).value() < -12);
        const auto pictures = media::open_pictures(open_file(movie));
        const sample::Scene scene(p, sound.truth);
        for (const auto& breath : sound.truth.breaths) {
            const auto shown = pictures->at(breath.span.middle());
            const auto drawn = scene.at(shown.time);
            CHECK(difference(shown, drawn) < 3);
        }
        const auto truth = nlohmann::json::parse(read_all(kCommitted / sample::truth_file(p)));
        CHECK(truth.at("notes").size() == sound.truth.notes.size());
        CHECK(truth.at("breaths").size() == sound.truth.breaths.size());
        const auto facts = media::probe(open_file(movie));
        REQUIRE(facts.video);
        CHECK(facts.video->frame_rate == p.frame_rate);
    }
}

TEST_CASE("Both performances hold what the sample is there to show") {
    for (const auto& p : {sample::first_performance(), sample::second_performance()}) {
        CAPTURE(p.name);
        const auto t = singer::render(p.song, p.singer, SampleRate{16000}).truth;
        CHECK(t.duration > Seconds(45));
        CHECK(t.duration < Seconds(75));
        const auto some = [](const auto& list, auto&& is) {
            return std::any_of(list.begin(), list.end(), is);
        };
        for (const auto kind :
             {marks::OnsetKind::glottal, marks::OnsetKind::breathy, marks::OnsetKind::balanced})
            CHECK(some(t.notes, [&](const auto& n) { return n.onset == kind; }));
        for (const auto kind :
             {marks::OffsetKind::clean, marks::OffsetKind::breathy, marks::OffsetKind::trailing})
            CHECK(some(t.notes, [&](const auto& n) { return n.offset == kind; }));
        CHECK(some(t.breaths, [](const auto& b) { return b.inside_phrase; }));
        CHECK(some(t.breaths, [](const auto& b) { return !b.heard; }));
        CHECK(some(t.notes, [](const auto& n) { return n.vibrato.has_value(); }));
        CHECK(t.switches.size() >= 4);
    }
}
