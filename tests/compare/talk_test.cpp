// A long spoken introduction, by Debian's festival speech synthesizer, before the song.
#include "compare/heard.h"
#include "media/media.h"
#include "signal/resampler.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;
using namespace luft::test;

namespace {

/// The words as festival says them, at 44.1 kHz.
std::vector<float> spoken(const std::string& words) {
    const Folder folder;
    write_all(folder.path() / "words.txt", words);
    run("text2wave -o " + quoted(folder.path() / "words.wav") + " " + quoted(folder.path() / "words.txt"));
    const auto sound = media::open_sound(open_file(folder.path() / "words.wav"));
    signal::Resampler resampler(sound->format().rate, {44100});
    std::vector<float> out;
    while (const auto block = sound->read())
        resampler.process(block->samples, out);
    resampler.finish(out);
    return out;
}

} // namespace

TEST_CASE("half a minute of speech before the song is no counterpart of it") {
    const std::vector<float> talk = spoken(
        "Good evening. The next one is a song that my grandmother used to hum when the nets came in. "
        "Nobody ever wrote it down, so every one of us sings it a little differently, and tonight you will "
        "hear my way of it. There is a long note in the second verse, and if I run out of air you are "
        "welcome to breathe for me. Some of you may know the last line. If you do, please keep it to "
        "yourselves until we get there, and then sing it as loudly as you can. Thank you for coming.");
    REQUIRE(talk.size() > std::size_t{20 * 44100});
    const singer::Song song =
        scenes::random_song({.voice = singer::VoiceType::tenor, .seed = 916, .phrases = 6});
    const Performed a = sing_and_hear(song, {});
    Rendering how{.voice = singer::VoiceType::alto, .seed = 2, .rubato = 0.1, .semitones = 5};
    how.talk = talk;
    const Performed b = sing_and_hear(song, how);
    const Alignment found = align(a.side, b.side);
    const Errors e = errors_of(a, b, found);
    CHECK(found.semitones == 5);
    CHECK(e.lost == 0);
    CHECK(e.median_ms < 50);
    CHECK(e.right_pairs >= 0.95);
    CHECK(found.only_a.empty());
    REQUIRE(found.only_b.size() == 1);
    CHECK(found.only_b[0].span.start.value() < 1);
    CHECK(found.only_b[0].span.end.value() == Approx(b.talk.end.value()).margin(2));
}
