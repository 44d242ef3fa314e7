// What is in a file, against what the ffprobe program reads in the same file.
#include "media/media.h"
#include "media/tools.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::media;
using namespace luft::media::test;
using namespace luft::test;

namespace {

/// Tone and moving test picture, by ffmpeg's own generators.
const std::string kSound = "-f lavfi -i sine=frequency=440:sample_rate=44100:duration=2 ";
const std::string kPicture = "-f lavfi -i testsrc=size=96x64:rate=30000/1001:duration=2 ";

} // namespace

TEST_CASE("the facts of sound files are those that ffprobe reads") {
    const Folder folder;
    const std::vector<std::string> files{"a.wav",  "a.flac", "a.mp3", "a.m4a", "a.ogg",
                                         "a.opus", "a.aiff", "a.mka", "a.ts"};
    std::string all = kSound;
    for (const std::string& file : files)
        all += " -ac 2 " + quoted(folder / file);
    ffmpeg(all);
    for (const std::string& file : files) {
        INFO(file);
        const Facts facts = probe(open_file(folder / file));
        const auto told = ffprobe(folder / file, "a:0", "stream=codec_name,sample_rate,channels");
        const auto whole = ffprobe(folder / file, "", "format=format_long_name,duration");
        REQUIRE(told.size() >= 3);
        REQUIRE(facts.audio);
        CHECK(facts.audio->codec == told[0]);
        CHECK(std::to_string(facts.audio->format.rate.per_second) == told[1]);
        CHECK(std::to_string(facts.audio->format.channels.size()) == told[2]);
        CHECK(facts.container == whole.at(0));
        CHECK(facts.duration.value() == Approx(std::stod(whole.at(1))).margin(0.03));
        CHECK_FALSE(facts.video);
    }
}

TEST_CASE("the facts of video files are those that ffprobe reads") {
    const Folder folder;
    const auto [file, codecs] =
        GENERATE(table<std::string, std::string>({{"a.mp4", "-c:v libx264"},
                                                  {"a.mkv", "-c:v libx264"},
                                                  {"a.webm", "-c:v libvpx -deadline realtime"},
                                                  {"a.mov", "-c:v mpeg4"},
                                                  {"a.avi", "-c:v mpeg4"},
                                                  {"a.ts", "-c:v mpeg2video -c:a mp2"},
                                                  {"a.mpg", "-c:v mpeg2video -c:a mp2"}}));
    ffmpeg(kPicture + kSound + codecs + " " + quoted(folder / file));
    const Facts facts = probe(open_file(folder / file));
    INFO(file);
    const auto told = ffprobe(folder / file, "v:0", "stream=codec_name,width,height,avg_frame_rate");
    REQUIRE(told.size() >= 4);
    REQUIRE(facts.video);
    CHECK(facts.video->codec == told[0]);
    CHECK(std::to_string(facts.video->width) == told[1]);
    CHECK(std::to_string(facts.video->height) == told[2]);
    CHECK(std::to_string(facts.video->frame_rate.num()) + "/" +
              std::to_string(facts.video->frame_rate.den()) ==
          told[3]);
    CHECK_FALSE(facts.video->variable_rate);
    REQUIRE(facts.audio);
    CHECK(facts.audio->codec == ffprobe(folder / file, "a:0", "stream=codec_name").at(0));
    CHECK(facts.duration.value() ==
          Approx(std::stod(ffprobe(folder / file, "", "format=duration").at(0))).margin(0.03));
}

TEST_CASE("cover art is no video") {
    const Folder folder;
    ffmpeg("-f lavfi -i testsrc=size=200x200 -frames:v 1 " + quoted(folder / "cover.png") + " -frames:v 1 " +
           quoted(folder / "cover.jpg"));
    const auto [file, options] = GENERATE(table<std::string, std::string>(
        {{"a.mp3", "-c:v copy -id3v2_version 3"}, {"a.m4a", "-c:v copy"}, {"a.flac", "-c:v copy"}}));
    for (const char* cover : {"cover.png", "cover.jpg"}) {
        ffmpeg(kSound + "-i " + quoted(folder / cover) + " -map 0 -map 1 " + options +
               " -disposition:v attached_pic " + quoted(folder / file));
        INFO(file << " with " << cover);
        REQUIRE(ffprobe(folder / file, "v", "stream=codec_type").at(0) == "video"); // ffprobe lists it as one
        const Facts facts = probe(open_file(folder / file));
        CHECK(facts.audio);
        CHECK_FALSE(facts.video);
        CHECK(hear(folder / file).length() == Approx(2).margin(0.1));
        CHECK_THROWS_AS(open_pictures(open_file(folder / file)), Error);
    }
}

TEST_CASE("a large cover doesn't hide the sound behind it") {
    const Folder folder;
    ffmpeg("-f lavfi -i nullsrc=size=1200x1200,geq=random\\(1\\)*255:128:128 -frames:v 1 " +
           quoted(folder / "cover.png"));
    ffmpeg(kSound + "-i " + quoted(folder / "cover.png") +
           " -map 0 -map 1 -c:v copy -disposition:v attached_pic " + quoted(folder / "a.mp3"));
    REQUIRE(std::filesystem::file_size(folder / "a.mp3") > 1 << 20);
    CHECK(probe(open_file(folder / "a.mp3")).audio);
    CHECK(hear(folder / "a.mp3").length() == Approx(2).margin(0.05));
}

TEST_CASE("a picture rate that varies is told from one that doesn't") {
    const Folder folder;
    const std::string file = GENERATE(as<std::string>{}, "a.mp4", "a.mkv", "a.ts");
    // Every fifth picture of the first second is dropped, and every other one of the second.
    ffmpeg(kPicture + "-vf \"select='if(lt(t,1),mod(n,5),mod(n,2))'\" -vsync vfr -c:v libx264 " +
           quoted(folder / file));
    INFO(file);
    const Facts facts = probe(open_file(folder / file));
    REQUIRE(facts.video);
    CHECK(facts.video->variable_rate);
    CHECK_FALSE(facts.audio);
}

TEST_CASE("width and height are those on the screen: turned, and with square pixels") {
    const Folder folder;
    ffmpeg(kPicture + "-c:v libx264 " + quoted(folder / "flat.mp4"));
    ffmpeg("-i " + quoted(folder / "flat.mp4") + " -c copy -metadata:s:v rotate=90 " +
           quoted(folder / "turned.mp4"));
    const Facts turned = probe(open_file(folder / "turned.mp4"));
    REQUIRE(turned.video);
    CHECK(turned.video->width == 64);
    CHECK(turned.video->height == 96);
    ffmpeg(kPicture + "-vf setsar=4/3 -c:v libx264 " + quoted(folder / "wide.mkv"));
    const Facts wide = probe(open_file(folder / "wide.mkv"));
    REQUIRE(wide.video);
    CHECK(wide.video->width == 128);
    CHECK(wide.video->height == 64);
}

TEST_CASE("the length of a stream without a length in its header is counted, not guessed") {
    const Folder folder;
    ffmpeg("-f lavfi -i anullsrc=r=48000:cl=stereo:d=3 -c:a aac " + quoted(folder / "a.aac"));
    CHECK(probe(open_file(folder / "a.aac")).duration.value() == Approx(3).margin(0.05));
    ffmpeg(kSound + "-f matroska - | cat > " +
           quoted(folder / "live.mkv")); // a pipe: no header to go back to
    CHECK(probe(open_file(folder / "live.mkv")).duration.value() == Approx(2).margin(0.05));
    ffmpeg(kSound + "-f flac - | cat > " + quoted(folder / "live.flac"));
    CHECK(probe(open_file(folder / "live.flac")).duration.value() == Approx(2).margin(0.05));
}

TEST_CASE("of several sound streams the default one is listened to") {
    const Folder folder;
    ffmpeg("-f lavfi -i sine=frequency=440:sample_rate=48000:duration=1 -f lavfi -i "
           "sine=frequency=440:sample_rate=32000:duration=1 -map 0 -map 1 -disposition:a:0 0 "
           "-disposition:a:1 default "
           "-c:a flac " +
           quoted(folder / "a.mkv"));
    CHECK(probe(open_file(folder / "a.mkv")).audio->format.rate.per_second == 32000);
    CHECK(hear(folder / "a.mkv").format.rate.per_second == 32000);
}
