// Silence, restart, pitch and ducking: the sound of a guide, decoded by the ffmpeg program.
#include "guide/duck.h"
#include "guide/guide.h"
#include "guide/programme.h"
#include "guide/voice_files.h"
#include "media/movie_writer.h"
#include "script/voices.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <fstream>
#include <numbers>

using namespace luft;
using namespace luft::guide;
using namespace luft::guide::testing;
using namespace luft::test;
using script::SegmentKind;

namespace {

constexpr double kCodec = 0.012; ///< how far AAC may smear an edge that it codes as one long block

/// A spoken word, in effect: a tone in a WAV file.
void speak(const std::filesystem::path& folder, std::int64_t item, double hertz, double length, int rate) {
    std::filesystem::create_directories(folder);
    const auto voice = media::write_movie(script::voice_file(folder, {item}),
                                          {.sample_rate = SampleRate{rate}, .channels = 1});
    std::vector<float> samples;
    for (int n = 0; n < std::lround(length * rate); ++n)
        samples.push_back(static_cast<float>(0.3 * std::sin(2 * std::numbers::pi * hertz * n / rate)));
    voice->sound(samples);
    voice->finish();
}

double clock_seconds(Rational t) {
    return t.as_double();
}

} // namespace

TEST_CASE("the sound halts, is silent, and goes on within a millisecond of the cue sheet's place") {
    const bool even = GENERATE(true, false);
    const Rational rate = even ? Rational(25) : Rational(30000, 1001);
    const std::string out = even ? "out.mp4" : "out.mkv";
    INFO(out << " at " << rate.num() << "/" << rate.den());
    const Folder folder;
    record(folder / "in.mp4", rate);
    const Programme p = programme(folder / "in.mp4", items(), rate);
    write_guide(p.material(), folder / out, {});
    const std::vector<float> heard = sound_in(folder / out);
    CHECK(static_cast<double>(heard.size()) / kRate ==
          Approx(clock_seconds(p.sheet.running_time)).margin(0.022));

    int plays = 0, talks = 0;
    for (const script::Segment& s : p.sheet.segments) {
        const double from = clock_seconds(s.programme_start), to = clock_seconds(s.programme_end);
        INFO("segment from " << from << " to " << to);
        if (s.kind == SegmentKind::talk) {
            ++talks;
            CHECK(level(heard, from + kCodec, to - kCodec) < 1e-4); // under -80 dB of full scale
        } else if (s.kind == SegmentKind::play) {
            ++plays;
            const double media = clock_seconds(s.media_start), length = to - from;
            CHECK(std::abs(lateness(heard, from + 0.01, sound(), media + 0.01)) < 0.001);
            CHECK(std::abs(lateness(heard, to - 0.12, sound(), media + length - 0.12)) < 0.001);
            // There at once, and there to the last: not a fade that is heard.
            CHECK(level(heard, from + 0.004, from + 0.014) >
                  0.6 * level(sound(), media + 0.004, media + 0.014));
            CHECK(level(heard, to - 0.014, to - 0.004) >
                  0.6 * level(sound(), media + length - 0.014, media + length - 0.004));
        }
    }
    CHECK(plays == 4);
    CHECK(talks == 5);
}

TEST_CASE("a replay at half speed keeps its pitch and its level") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    const Programme p = programme(folder / "in.mp4", items(), 25);
    write_guide(p.material(), folder / "out.mkv", {});
    const std::vector<float> heard = sound_in(folder / "out.mkv");
    const script::Segment& replay = segment(p, SegmentKind::replay, 0);
    const double from = clock_seconds(replay.programme_start) + 0.2,
                 to = clock_seconds(replay.programme_end) - 0.2;
    CHECK(tone(heard, kToneHertz, from, to) == Approx(0.25).margin(0.03));
    CHECK(tone(heard, kToneHertz / 2, from, to) < 0.01); // what a tape would do
    CHECK(level(heard, from, to) == Approx(0.25 / std::numbers::sqrt2).margin(0.02));
}

TEST_CASE("under an aside the music is ducked by what is said, and comes back") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    const Programme p = programme(folder / "in.mp4", items(), 25);
    write_guide(p.material(), folder / "out.mkv", {});
    const std::vector<float> heard = sound_in(folder / "out.mkv");
    REQUIRE(p.sheet.asides.size() == 1);
    const script::AsideCue& aside = p.sheet.asides[0];
    const double start = clock_seconds(aside.programme_start), end = clock_seconds(aside.programme_end);
    const double shift = aside.media_start.value() - start; // programme to media time in this segment
    const auto change = [&](double from, double to) {
        return amplitude_level(level(heard, from, to) / level(sound(), from + shift, to + shift)).value();
    };
    CHECK(change(start + 0.02, end - 0.02) == Approx(kDuck.value()).margin(0.4));
    CHECK(change(start - kDuckDown.value() - 0.3, start - kDuckDown.value() - 0.05) == Approx(0).margin(0.4));
    CHECK(change(start - kDuckDown.value() * 0.6, start - kDuckDown.value() * 0.4) ==
          Approx(kDuck.value() / 2).margin(1));
    // The next halt comes before the music is back: after it, it is.
    const script::Segment& last = segment(p, SegmentKind::play, 3);
    const double again = clock_seconds(last.programme_start), media = clock_seconds(last.media_start);
    CHECK(amplitude_level(level(heard, again + 0.02, again + 0.5) / level(sound(), media + 0.02, media + 0.5))
              .value() == Approx(0).margin(0.4));
}

TEST_CASE("recorded talk is laid on where its length is the rehearsed one, and else said why not") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    Programme p = programme(folder / "in.mp4", items(), 25);
    p.source.items[0].rehearsed.reset(); // its words were changed
    p.sheet = script::lay_out(p.source);
    speak(folder / "voice", 1, 1100, 0.61, 48000); // of the changed words
    speak(folder / "voice", 2, 900, 0.80, 44100);  // rehearsed at 0.83 s
    speak(folder / "voice", 3, 900, 0.64, 48000);  // rehearsed at 0.7 s: too short
    speak(folder / "voice", 5, 5000, 0.5, 22050);  // the aside
    std::ofstream(script::voice_file(folder / "voice", {4})) << "no sound";

    const Report report = write_guide(p.material(folder / "voice"), folder / "out.mkv", {});
    const std::vector<float> heard = sound_in(folder / "out.mkv");
    const double two = clock_seconds(segment(p, SegmentKind::talk, 1).programme_start);
    CHECK(tone(heard, 900, two + 0.05, two + 0.75) == Approx(0.3).margin(0.02));
    CHECK(level(heard, two + 0.002, two + 0.02) > 0.1);
    CHECK(level(heard, two - 0.5, two - 0.05) > 0.02); // the music before it goes on to the halt
    CHECK(level(heard, two + 0.80 + kCodec, two + 0.83) < 0.01);
    const double three = clock_seconds(segment(p, SegmentKind::talk, 2).programme_start);
    CHECK(level(heard, three + kCodec, three + 0.7) < 1e-4);
    const double aside = clock_seconds(p.sheet.asides.at(0).programme_start);
    CHECK(tone(heard, 5000, aside + 0.05, aside + 0.45) == Approx(0.3).margin(0.03));
    CHECK(tone(heard, 5000, aside - 0.45, aside - 0.05) < 0.01);

    REQUIRE(report.not_used.size() == 3);
    CHECK(report.not_used[0].find("'talk-1.wav' isn't used") == 0);
    CHECK(report.not_used[0].find("changed") != std::string::npos);
    CHECK(report.not_used[1].find("'talk-3.wav' isn't used: it lasts 0.64 s") == 0);
    CHECK(report.not_used[1].find("rehearsed at 0.70 s") != std::string::npos);
    CHECK(report.not_used[2].find("'talk-4.wav' isn't used") == 0);

    // Without voices the same talk is silent.
    CHECK(write_guide(p.material(), folder / "out.mkv", {}).not_used.empty());
    CHECK(level(sound_in(folder / "out.mkv"), two + kCodec, two + 0.8) < 1e-4);
}

TEST_CASE("recorded talk that breaks off or can't be decoded leaves silence, and is said with the reason") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    const Programme p = programme(folder / "in.mp4", items(), 25);
    for (const auto& [item, length] : {std::pair{2, 0.83}, {3, 0.7}, {4, 1.2}})
        speak(folder / "voice", item, 900, length, 48000);
    // As long as the talk, but without sound: only opening it shows that.
    run("ffmpeg -nostdin -v error -y -f lavfi -i color=size=64x48:rate=100:duration=0.61 -f matroska " +
        quoted(script::voice_file(folder / "voice", {1})));
    // Two are lost after the look at how long they are.
    bool lost = false;
    const Progress losing([&](double, std::string_view) {
        if (lost) return;
        lost = true;
        const auto two = script::voice_file(folder / "voice", {2});
        std::filesystem::resize_file(two, std::filesystem::file_size(two) / 2);
        std::ofstream(script::voice_file(folder / "voice", {3})) << "no sound";
    });
    const Report report = write_guide(p.material(folder / "voice"), folder / "out.mkv", {}, losing);
    const std::vector<float> heard = sound_in(folder / "out.mkv");
    const auto talk = [&](int n) { return clock_seconds(segment(p, SegmentKind::talk, n).programme_start); };
    CHECK(level(heard, talk(0) + kCodec, talk(0) + 0.61) < 1e-4);
    CHECK(tone(heard, 900, talk(1) + 0.05, talk(1) + 0.4) == Approx(0.3).margin(0.02));
    CHECK(level(heard, talk(1) + 0.42 + kCodec, talk(1) + 0.8) < 1e-4);
    CHECK(level(heard, talk(2) + kCodec, talk(2) + 0.7) < 1e-4);
    CHECK(tone(heard, 900, talk(3) + 0.05, talk(3) + 1.15) == Approx(0.3).margin(0.02)); // the next one again

    REQUIRE(report.not_used.size() == 3);
    CHECK(report.not_used[0].find("'talk-1.wav' isn't used: ") == 0);
    CHECK(report.not_used[0].find("no sound") != std::string::npos);
    CHECK(report.not_used[1] == "'talk-2.wav' is silent after 0.41 s: the rest of it is missing.");
    CHECK(report.not_used[2].find("'talk-3.wav' isn't used: ") == 0);
}

TEST_CASE("recorded talk of an aside that the next halt cuts off is used, and said to be cut off") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    auto script = items();
    script[4].at = Seconds(6.9); // the halt is at 7.12 s
    const Programme p = programme(folder / "in.mp4", script, 25);
    speak(folder / "voice", 5, 900, 0.5, 48000);
    const VoiceFiles files = find_voices(folder / "voice", p.source, p.sheet);
    CHECK(files.used.count({5}) == 1);
    REQUIRE(files.not_used.size() == 1);
    CHECK(files.not_used[0] == "'talk-5.wav' is cut off after 0.20 s, where the next halt or aside begins.");
    CHECK(find_voices(folder / "none", p.source, p.sheet).not_used.empty());
}

TEST_CASE("sound of any rate and any channels becomes stereo that the codec takes") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    for (const auto& [name, how] : {std::pair{"high.mkv", "-ar 192000 -c:a flac"},
                                    {"mono.mkv", "-ac 1 -ar 22050 -c:a flac"},
                                    {"odd.mkv", "-ar 37800 -c:a flac"},
                                    {"six.mkv", "-af 'pan=5.1|FL=c0|FR=c1' -c:a flac"}}) {
        INFO(name);
        run("ffmpeg -nostdin -v error -y -i " + quoted(folder / "in.mp4") + " -t 3 -c:v copy " + how + " " +
            quoted(folder / name));
        const Programme p = programme(folder / name, {spoken(1, ScriptItemKind::stop, 1.5, 0.5)}, 25);
        write_guide(p.material(), folder / "out.mp4", {});
        const auto said =
            probed(folder / "out.mp4", "-select_streams a -show_entries stream=codec_name,channels");
        CHECK(said == std::vector<std::string>{"aac", "2"});
        const std::vector<float> heard = sound_in(folder / "out.mp4");
        const double again = clock_seconds(segment(p, SegmentKind::play, 1).programme_start);
        // 1.5 s is half a frame from one: it goes on at frame 38, 1.52 s.
        CHECK(std::abs(lateness(heard, again + 0.01, sound(), 1.53)) < 0.001);
        CHECK(std::abs(lateness(heard, 0.5, sound(), 0.5)) < 0.001);
    }
}
