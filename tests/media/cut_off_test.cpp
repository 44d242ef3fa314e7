// Files that lost their end, and files that only look so.
#include "media/media.h"
#include "media/tools.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::media;
using namespace luft::media::test;
using namespace luft::test;

namespace {

const std::string kNoise = "-f lavfi -i anoisesrc=d=8:a=0.1:r=44100:seed=3 ";
const std::string kPicture = "-f lavfi -i testsrc=size=64x48:d=8 ";

} // namespace

TEST_CASE("a file that ends before the length in its header is cut off, and the facts say where") {
    const Folder folder;
    const auto [file, codecs] = GENERATE(
        table<std::string, std::string>({{"a.wav", ""},
                                         {"a.flac", ""},
                                         {"a.mp3", ""},
                                         {"a.aiff", ""},
                                         {"a.mka", ""},
                                         {"a.m4a", "-movflags faststart"},
                                         {"a.mp4", "-map 0 -map 1 -c:v libx264 -movflags faststart"},
                                         {"a.mkv", "-map 0 -map 1 -c:v libx264"},
                                         {"a.webm", "-map 0 -map 1 -c:v libvpx -deadline realtime"}}));
    ffmpeg(kNoise + kPicture + codecs + " " + quoted(folder / file));
    const std::string bytes = read_all(folder / file);
    const Facts whole = probe(in_memory(file, bytes));
    CAPTURE(file);
    CHECK_FALSE(whole.cut_off_from);
    CHECK(whole.duration.value() == Approx(8).margin(0.1));

    const Facts half = probe(in_memory(file, bytes.substr(0, bytes.size() / 2)));
    REQUIRE(half.cut_off_from);
    CHECK(half.cut_off_from->value() == Approx(whole.duration.value()).margin(0.1));
    CHECK(half.duration.value() > 2.5);
    CHECK(half.duration.value() < 5.5);
    // What is there can still be heard.
    CHECK(hear(*open_sound(in_memory(file, bytes.substr(0, bytes.size() / 2)))).length() > 2.0);
}

TEST_CASE("files that announce no length, and tracks of different lengths, aren't taken for cut off") {
    const Folder folder;
    ffmpeg(kNoise + quoted(folder / "a.ogg") + " " + quoted(folder / "a.aac") + " " +
           quoted(folder / "a.ts"));
    for (const char* file : {"a.ogg", "a.aac", "a.ts"}) {
        CAPTURE(file);
        const std::string bytes = read_all(folder / file);
        CHECK_FALSE(probe(in_memory(file, bytes)).cut_off_from);
        CHECK_FALSE(probe(in_memory(file, bytes.substr(0, bytes.size() / 2))).cut_off_from);
    }
    // A pipe's WAV header leaves the length open.
    run("ffmpeg -nostdin -v error " + kNoise + "-f wav - | cat > " + quoted(folder / "piped.wav"));
    CHECK_FALSE(probe(open_file(folder / "piped.wav")).cut_off_from);
    // Sound that ends before the pictures, and pictures that end before the sound.
    const std::string short_sound = "-f lavfi -i anoisesrc=d=3:a=0.1:r=44100 ";
    const std::string short_picture = "-f lavfi -i testsrc=size=64x48:d=3 ";
    for (const char* file : {"a.mp4", "a.mkv"}) {
        CAPTURE(file);
        ffmpeg(short_sound + kPicture + "-c:v libx264 " + quoted(folder / file));
        CHECK_FALSE(probe(open_file(folder / file)).cut_off_from);
        ffmpeg(kNoise + short_picture + "-c:v libx264 " + quoted(folder / file));
        CHECK_FALSE(probe(open_file(folder / file)).cut_off_from);
    }
    // A trimmed copy whose edit list shows only a part of what is in the file.
    ffmpeg(kNoise + kPicture + "-c:v libx264 -g 250 " + quoted(folder / "long.mp4"));
    ffmpeg("-ss 5 -i " + quoted(folder / "long.mp4") + " -t 2 -c copy " + quoted(folder / "trimmed.mp4"));
    CHECK_FALSE(probe(open_file(folder / "trimmed.mp4")).cut_off_from);
}
