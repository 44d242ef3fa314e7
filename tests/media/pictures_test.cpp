// The picture at a time: videos whose every frame carries its number as its brightness, made by the ffmpeg
// program.
#include "media/media.h"
#include "media/tools.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace luft;
using namespace luft::media;
using namespace luft::media::test;
using namespace luft::test;

namespace {

// Frame n has luma 16 + 4 n, so that its RGB is 255/219 x 4 n (ITU-R BT.601, video range).
const std::string kNumbered =
    "-f lavfi -i \"nullsrc=size=64x48:rate=25:duration=2,format=yuv420p,geq=lum='16+4*N':cb=128:cr=128\" ";

int number_of(const Picture& picture) {
    REQUIRE(picture.rgb.size() == std::size_t{3} * static_cast<std::size_t>(picture.width * picture.height));
    const auto middle =
        3 * (static_cast<std::size_t>(picture.height / 2) * picture.width + picture.width / 2);
    return static_cast<int>(std::lround(picture.rgb[middle] * 219.0 / 255 / 4));
}

/// The colour of a pixel, its three parts each 0 to 3.
int colour(const Picture& picture, int x, int y) {
    const auto at = 3 * (static_cast<std::size_t>(y) * picture.width + x);
    const auto part = [&](std::size_t i) { return picture.rgb[at + i] / 64; };
    return 100 * part(0) + 10 * part(1) + part(2);
}

constexpr int kRed = 300;
constexpr int kGreen = 20; // as ffmpeg's 'green', which is half bright
constexpr int kBlue = 3;
constexpr int kWhite = 333;

} // namespace

TEST_CASE("the picture at a time is the last one presented at or before it, wherever one comes from") {
    const Folder folder;
    const std::vector<std::pair<std::string, std::string>> files{
        {"b.mp4", "-c:v libx264 -g 12 -bf 3"},
        {"a.mkv", "-c:v libx264 -g 250"},
        {"a.mov", "-c:v mjpeg -q:v 2"},
        {"a.webm", "-c:v libvpx -deadline realtime -crf 4 -b:v 2M"},
        {"a.avi", "-c:v mpeg4 -q:v 1 -g 10"},
        {"a.ts", "-c:v libx264 -g 12 -bf 2"},
        {"open.mkv", "-c:v libx264 -x264-params open-gop=1:keyint=10:bframes=3"},
        {"raw.h264", "-c:v libx264 -bf 0"}};
    std::string all = kNumbered;
    for (const auto& [file, options] : files)
        all += options + " " + quoted(folder / file) + " ";
    ffmpeg(all);
    for (const auto& [file, options] : files) {
        INFO(file);
        const auto pictures = open_pictures(open_file(folder / file));
        for (const double t : {1.5, 0.0, 0.02, 0.04, 0.1, 0.5, 0.52, 1.9, 1.0, 0.98, 0.96, 0.3, 1.7, -3.0,
                               1.99, 99.0, 0.0, 1.3}) {
            INFO("at " << t);
            const Picture picture = pictures->at(Seconds(t));
            const int expected = std::clamp(static_cast<int>(std::floor(t * 25 + 1e-6)), 0, 49);
            CHECK(number_of(picture) == expected);
            CHECK(picture.time.value() == Approx(expected / 25.0).margin(0.001));
            CHECK(picture.width == 64);
            CHECK(picture.height == 48);
        }
        for (int n = 0; n < 50; ++n)
            REQUIRE(number_of(pictures->at(Seconds(n / 25.0))) == n);
    }
}

TEST_CASE(
    "in a program stream, which stamps only some pictures, the picture at a time is right to one frame") {
    const Folder folder;
    ffmpeg(kNumbered + "-c:v mpeg2video -q:v 1 " + quoted(folder / "a.mpg"));
    const auto pictures = open_pictures(open_file(folder / "a.mpg"));
    for (const double t : {1.51, 0.01, 0.05, 0.5, 1.9, 1.01, 0.97, 0.3, 1.7, 1.31})
        CHECK(std::abs(number_of(pictures->at(Seconds(t))) - std::floor(t * 25)) <= 1);
}

TEST_CASE("where the picture rate varies, a picture stays until the next one") {
    const Folder folder;
    // Only frames 0, 3, 4, 20 and 30 are left.
    ffmpeg(kNumbered + "-vf \"select='eq(n,0)+eq(n,3)+eq(n,4)+eq(n,20)+eq(n,30)'\" -vsync vfr -c:v libx264 " +
           quoted(folder / "a.mp4") +
           " -vf \"select='eq(n,0)+eq(n,3)+eq(n,4)+eq(n,20)+eq(n,30)'\" -vsync vfr -c:v libx264 " +
           quoted(folder / "a.mkv"));
    for (const char* file : {"a.mp4", "a.mkv"}) {
        INFO(file);
        const auto pictures = open_pictures(open_file(folder / file));
        for (const auto& [n, shown] : {std::pair{29, 20},
                                       {1, 0},
                                       {2, 0},
                                       {3, 3},
                                       {4, 4},
                                       {12, 4},
                                       {19, 4},
                                       {20, 20},
                                       {45, 30},
                                       {18, 4}})
            CHECK(number_of(pictures->at(Seconds(n / 25.0 + 0.01))) == shown);
    }
}

TEST_CASE("pictures and sound share one clock, also in a transport stream that starts anywhere") {
    const Folder folder;
    write_wav(folder / "in.wav", sound_with_sweep(1.0, 1.6, 48000, 1), 48000, 1);
    ffmpeg(kNumbered + "-i " + quoted(folder / "in.wav") +
           " -c:v libx264 -bf 2 -c:a ac3 -output_ts_offset 4321 " + quoted(folder / "a.ts"));
    const auto pictures = open_pictures(open_file(folder / "a.ts"));
    const Heard heard = hear(folder / "a.ts");
    const double at = where_is_sweep(heard, 1.0);
    CHECK(at == Approx(1.0).margin(0.006)); // AC-3's delay is 5.3 ms (ATSC A/52)
    CHECK(number_of(pictures->at(Seconds(at + 0.02))) == 25);
}

TEST_CASE("a turned or mirrored picture is shown upright") {
    const Folder folder;
    // Quarters: red and green above, blue and white below.
    ffmpeg("-f lavfi -i color=red:size=32x16:d=0.2 -f lavfi -i color=green:size=32x16:d=0.2 -f lavfi -i "
           "color=blue:size=32x16:d=0.2 -f lavfi -i color=white:size=32x16:d=0.2 -filter_complex "
           "'[0][1]hstack[a];[2][3]hstack[b];[a][b]vstack' -c:v libx264 -crf 1 -pix_fmt yuv444p " +
           quoted(folder / "flat.mp4"));
    const auto quarters = [&](const std::filesystem::path& file) {
        const Picture p = open_pictures(open_file(file))->at(Seconds(0));
        const int right = p.width * 3 / 4, left = p.width / 4, low = p.height * 3 / 4, high = p.height / 4;
        return std::vector<int>{p.width, colour(p, left, high), colour(p, right, high), colour(p, left, low),
                                colour(p, right, low)};
    };
    CHECK(quarters(folder / "flat.mp4") == std::vector<int>{64, kRed, kGreen, kBlue, kWhite});
    // ffmpeg turns pictures itself when it converts to another file: an independent reading of the same
    // matrix.
    for (const char* degrees : {"90", "180", "270"}) {
        INFO(degrees);
        ffmpeg("-i " + quoted(folder / "flat.mp4") + " -c copy -metadata:s:v rotate=" + degrees + " " +
               quoted(folder / "turned.mp4"));
        ffmpeg("-i " + quoted(folder / "turned.mp4") + " -c:v libx264 -crf 1 " +
               quoted(folder / "upright.mkv"));
        CHECK(quarters(folder / "turned.mp4") != quarters(folder / "flat.mp4"));
        CHECK(quarters(folder / "turned.mp4") == quarters(folder / "upright.mkv"));
    }
}

TEST_CASE("a picture is scaled down to the width asked for, in its shape") {
    const Folder folder;
    ffmpeg("-f lavfi -i testsrc=size=320x180:d=0.2 -c:v libx264 " + quoted(folder / "flat.mp4"));
    ffmpeg("-i " + quoted(folder / "flat.mp4") + " -c copy -metadata:s:v rotate=90 " +
           quoted(folder / "turned.mp4"));
    const auto flat = open_pictures(open_file(folder / "flat.mp4"));
    const auto size = [](const Picture& p) { return std::pair(p.width, p.height); };
    CHECK(size(flat->at(Seconds(0), 160)) == std::pair(160, 90));
    CHECK(size(flat->at(Seconds(0), 1)) == std::pair(1, 1));
    CHECK(size(flat->at(Seconds(0), 1000)) == std::pair(320, 180));
    CHECK(size(flat->at(Seconds(0))) == std::pair(320, 180));
    CHECK(size(open_pictures(open_file(folder / "turned.mp4"))->at(Seconds(0), 90)) == std::pair(90, 160));
}

TEST_CASE("colours keep their values, whatever matrix and range they were stored with") {
    const Folder folder;
    const std::string file = GENERATE(as<std::string>{}, "601.mp4", "709.mp4", "full.mov");
    const std::string how =
        file == "601.mp4"   ? "-vf scale=out_color_matrix=bt601,format=yuv420p -colorspace smpte170m"
        : file == "709.mp4" ? "-vf scale=out_color_matrix=bt709,format=yuv420p -colorspace bt709"
                            : "-pix_fmt yuvj420p -c:v mjpeg -q:v 1";
    ffmpeg("-f lavfi -i color=0x30A0E0:size=64x48:d=0.2,format=rgb24 " + how + " " + quoted(folder / file));
    const Picture picture = open_pictures(open_file(folder / file))->at(Seconds(0));
    INFO(file);
    CHECK(int{picture.rgb[3000]} == Approx(0x30).margin(4));
    CHECK(int{picture.rgb[3001]} == Approx(0xA0).margin(4));
    CHECK(int{picture.rgb[3002]} == Approx(0xE0).margin(4));
}
