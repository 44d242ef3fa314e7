// The hint that pitch was corrected: quiet on singing as sung, raised on the same songs with their pitch
// pinned.
#include "profile/correction_hint.h"
#include "scenes/songs.h"
#include "singer/band.h"
#include "singer/room.h"

#include <catch2/catch.hpp>

#include <array>
#include <cstdio>

using namespace luft;
using namespace luft::profile;

namespace {

/// What was done to the pitch after singing.
enum class Tuned { as_sung, fully, centres_only };

singer::Rendition song(singer::VoiceType voice, std::uint64_t seed, Tuned how, int phrases = 6) {
    auto song = scenes::random_song({.voice = voice, .seed = seed, .phrases = phrases});
    singer::Singer who{
        .voice = voice, .tuning = Hertz(436 + static_cast<double>(seed % 9)), .seed = seed + 7};
    if (how != Tuned::as_sung)
        for (auto& phrase : song.phrases)
            for (auto& event : phrase.events)
                if (auto* n = std::get_if<singer::SungNote>(&event)) n->off = n->drift = n->scoop = Cents(0);
    if (how == Tuned::fully) who.wander = Cents(0.3), who.glide = Seconds(0.015);
    return singer::render(song, who, {44100});
}

Source source_of(std::vector<float> samples, SampleRate rate, bool accompanied = false) {
    singer::MemorySource sound(std::move(samples), rate, accompanied ? 2 : 1);
    const auto said = marks::listen(sound, {.accompaniment = accompanied ? marks::Accompaniment::accompanied
                                                                         : marks::Accompaniment::alone});
    Source s;
    s.vocabulary = vocabulary::default_vocabulary();
    s.listening =
        project::Listening{said.setting, said.tuning, said.loudness, said.one_register, said.duration};
    s.curves = said.curves;
    const auto add = [&](auto what) {
        project::Mark mark;
        mark.what = std::move(what);
        s.marks.push_back(std::move(mark));
    };
    for (const auto& n : said.notes)
        add(n);
    for (const auto& p : said.phrases)
        add(p);
    return s;
}

Source over_band(const singer::Rendition& sung, double over, std::uint64_t seed) {
    std::vector<singer::Chord> chords;
    for (double bass = 37; static_cast<double>(chords.size()) * 2.8 < sung.truth.duration.value();
         bass = 80 - bass)
        chords.push_back({MidiPitch(bass), {MidiPitch(52), MidiPitch(56), MidiPitch(61)}});
    const auto band = singer::play(singer::accompany(chords, {}), sung.truth.duration, sung.rate, seed);
    return source_of(singer::mix(sung.samples, band, Decibels(over), sung.rate), sung.rate, true);
}

void print(const char* name, int voice, const Source& s) {
    const Material m(s);
    const auto p = pitch_steadiness(m);
    std::printf("%-16s voice %d: centre %.1f (%d) stray %.2f (%d) step %.0f ms (%d) -> signs %d\n", name,
                voice, p.centre_cents.value_or(-1), p.notes, p.stray_cents.value_or(-1), p.held,
                1000 * p.step_time.value_or(Seconds(-0.001)).value(), p.steps,
                correction_hint(m) ? correction_hint(m)->signs : 0);
}

constexpr std::array kVoices{singer::VoiceType::bass, singer::VoiceType::tenor,
                             singer::VoiceType::countertenor, singer::VoiceType::alto,
                             singer::VoiceType::soprano};

std::optional<FacetHint> hint_on(const Source& s) {
    return correction_hint(Material(s));
}

} // namespace

TEST_CASE("songs as sung don't raise the hint of corrected pitch, alone, in a room or over a band") {
    for (const auto voice : kVoices)
        for (std::uint64_t seed = 700; seed < 704; ++seed) {
            CAPTURE(int(voice), seed);
            const auto sung = song(voice, seed, Tuned::as_sung);
            CHECK_FALSE(hint_on(source_of(sung.samples, sung.rate)));
            if (seed > 700) continue;
            CHECK_FALSE(hint_on(source_of(singer::in_room(sung.samples, sung.rate, {}), sung.rate)));
            CHECK_FALSE(hint_on(over_band(sung, 6, seed)));
        }
}

TEST_CASE("songs with pinned pitch, flat notes and quick steps raise it") {
    for (const auto voice : kVoices)
        for (std::uint64_t seed = 700; seed < 703; ++seed) {
            CAPTURE(int(voice), seed);
            const auto sung = song(voice, seed, Tuned::fully);
            const auto hint = hint_on(source_of(sung.samples, sung.rate));
            REQUIRE(hint);
            CHECK(hint->signs >= 2);
            CHECK(hint->words.find("hint, not a finding") != std::string::npos);
            CHECK(hint->evidence.size() == 3);
            if (seed > 700) continue;
            CHECK(hint_on(source_of(singer::in_room(sung.samples, sung.rate, {}), sung.rate)));
            CHECK(hint_on(over_band(sung, 6, seed)));
        }
}

TEST_CASE("one sign alone, as of a very accurate singer, raises nothing") {
    for (const auto voice : kVoices) {
        CAPTURE(int(voice));
        const auto sung = song(voice, 710, Tuned::centres_only);
        const Source s = source_of(sung.samples, sung.rate);
        const auto p = pitch_steadiness(Material(s));
        REQUIRE(p.centre_cents);
        CHECK(*p.centre_cents < kPinnedCentre); // the one sign
        CHECK_FALSE(hint_on(s));
    }
}

TEST_CASE("a few notes raise nothing, however they lie") {
    const auto sung = song(singer::VoiceType::tenor, 701, Tuned::fully, 2);
    CHECK_FALSE(hint_on(source_of(sung.samples, sung.rate)));
    CHECK_FALSE(hint_on(Source{}));
}

TEST_CASE("the hint stands in the intonation facet and makes no moment") {
    const auto sung = song(singer::VoiceType::alto, 702, Tuned::fully);
    const Profile p = make_profile(source_of(sung.samples, sung.rate));
    const auto facet = std::ranges::find(p.facets, "intonation", &FacetProfile::key);
    REQUIRE(facet != p.facets.end());
    REQUIRE(facet->hints.size() == 1);
    CHECK(facet->hints[0].key == "pitch-corrected");
    for (const auto& f : p.strengths)
        if (f.facet == "intonation") CHECK(f.hint); // no plain praise for what may not be the singer's doing
    const auto plain = song(singer::VoiceType::alto, 702, Tuned::as_sung);
    for (const auto& f : make_profile(source_of(plain.samples, plain.rate)).facets)
        CHECK(f.hints.empty());
}

TEST_CASE("figures: signs of corrected pitch", "[.][figures]") {
    for (std::uint64_t seed = 1500; seed < 1510; ++seed) {
        const auto voice = static_cast<singer::VoiceType>(seed % 5);
        for (const auto how : {Tuned::as_sung, Tuned::centres_only, Tuned::fully}) {
            const auto sung = song(voice, seed, how);
            const char* names[] = {"as sung", "fully", "centres"};
            std::printf("%s ", names[int(how)]);
            print("dry", int(voice), source_of(sung.samples, sung.rate));
            if (seed < 1505 && how != Tuned::centres_only) {
                std::printf("%s ", names[int(how)]);
                print("room", int(voice), source_of(singer::in_room(sung.samples, sung.rate, {}), sung.rate));
                std::printf("%s ", names[int(how)]);
                print("band +6", int(voice), over_band(sung, 6, seed));
            }
        }
    }
}
