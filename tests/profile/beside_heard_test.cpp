// The same singing heard twice stands out in nothing.
#include "profile/beside.h"
#include "scenes/small_band.h"
#include "scenes/songs.h"
#include "singer/room.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::profile;

namespace {

Profile profile_of(std::vector<float> samples, SampleRate rate, int channels) {
    singer::MemorySource sound(std::move(samples), rate, channels);
    const auto heard = marks::listen(sound);
    Source s;
    s.vocabulary = vocabulary::default_vocabulary();
    s.listening =
        project::Listening{heard.setting, heard.tuning, heard.loudness, heard.one_register, heard.duration};
    s.curves = heard.curves;
    const auto add = [&](const auto& all) {
        for (const auto& one : all) {
            project::Mark mark;
            mark.what = one;
            s.marks.push_back(std::move(mark));
        }
    };
    add(heard.notes), add(heard.breaths), add(heard.phrases), add(heard.switches);
    return make_profile(s);
}

singer::Rendition sung(std::uint64_t seed, int phrases, singer::VoiceType voice, bool vibrato = true) {
    const auto song =
        scenes::random_song({.voice = voice, .seed = seed, .phrases = phrases, .vibrato = vibrato});
    return singer::render(song, {.voice = voice, .seed = seed}, {44100});
}

std::vector<std::string> said(const std::vector<Profile>& profiles) {
    std::vector<std::string> out;
    for (const auto& column : set_beside(profiles).columns)
        out.insert(out.end(), column.stands_out.begin(), column.stands_out.end());
    return out;
}

void print(const std::vector<std::string>& sentences) {
    for (const auto& s : sentences)
        UNSCOPED_INFO(s);
}

} // namespace

TEST_CASE("of the same singing in two rooms nothing is said to stand out") {
    std::vector<std::string> all;
    for (std::uint64_t seed = 951; seed <= 954; ++seed) {
        const auto song = sung(seed, 8, seed % 2 == 0 ? singer::VoiceType::tenor : singer::VoiceType::alto);
        const auto here = profile_of(
            singer::in_room(song.samples, song.rate, {.decay = Seconds(0.4), .seed = seed}), song.rate, 1);
        const auto there =
            profile_of(singer::in_room(song.samples, song.rate, {.decay = Seconds(1.0), .seed = seed + 1}),
                       song.rate, 1);
        const auto here_said = said({here, there});
        all.insert(all.end(), here_said.begin(), here_said.end());
    }
    print(all);
    CHECK(all.empty());
}

TEST_CASE("of the same singing alone and over a band nothing is said to stand out") {
    std::vector<std::string> all;
    for (std::uint64_t seed = 951; seed <= 954; ++seed) {
        const auto song = sung(seed, 8, seed % 2 == 0 ? singer::VoiceType::tenor : singer::VoiceType::alto);
        const auto band =
            singer::mix(song.samples, scenes::small_band(song, {}, seed), Decibels(8), song.rate);
        const auto here_said = said({profile_of(song.samples, song.rate, 1), profile_of(band, song.rate, 2)});
        all.insert(all.end(), here_said.begin(), here_said.end());
    }
    print(all);
    CHECK(all.empty());
}

TEST_CASE("the same song sung with and without vibrato is told apart by its vibrato") {
    const auto with = sung(953, 12, singer::VoiceType::alto),
               without = sung(953, 12, singer::VoiceType::alto, false);
    const auto all =
        said({profile_of(with.samples, with.rate, 1), profile_of(without.samples, without.rate, 1)});
    print(all);
    CHECK(std::ranges::any_of(all, [](const std::string& s) { return s.starts_with("Vibrato: "); }));
}
