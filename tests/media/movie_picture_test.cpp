// Pictures on the short road from a video into a movie, read back by the ffmpeg program.
#include "media/media.h"
#include "media/movie_writer.h"
#include "media/tools.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>
#include <sys/stat.h>

#include <array>
#include <cerrno>

using namespace luft;
using namespace luft::media;
using namespace luft::media::test;
using namespace luft::test;

namespace {

Picture plain(int width, int height, std::uint8_t level) {
    return {width, height, Seconds(0),
            std::vector<std::uint8_t>(std::size_t{3} * static_cast<std::size_t>(width * height), level)};
}

/// A movie of what a video shows first, of that size.
void copy_first(const std::filesystem::path& video, const std::filesystem::path& movie, int width,
                int height) {
    const auto pictures = open_pictures(open_file(video));
    MovieFormat format;
    format.width = width;
    format.height = height;
    format.quick = true;
    format.colours = pictures->colours();
    const auto writer = write_movie(movie, format);
    for (int i = 0; i < 5; ++i)
        writer->picture(pictures->movie_at(Seconds(0), width, height));
    writer->sound(std::vector<float>(2 * 9600));
    writer->finish();
}

/// A movie's first picture, made RGB by the ffmpeg program.
class Seen {
  public:
    Seen(const std::filesystem::path& movie, const Folder& folder, int width) : width_(width) {
        ffmpeg("-i " + quoted(movie) + " -frames:v 1 -f rawvideo -pix_fmt rgb24 " +
               quoted(folder / "seen.rgb"));
        rgb_ = read_all(folder / "seen.rgb");
    }
    /// 0xRRGGBB, each rounded to the nearest of 0, 40, 80, C0, FF (hex), so that a codec's error doesn't
    /// show.
    [[nodiscard]] int operator()(int x, int y) const {
        int colour = 0;
        for (int c = 0; c < 3; ++c) {
            const int v =
                static_cast<unsigned char>(rgb_[static_cast<std::size_t>(3 * (y * width_ + x) + c)]);
            colour = 256 * colour + std::min((v + 32) / 64 * 64, 255);
        }
        return colour;
    }

  private:
    int width_;
    std::string rgb_;
};

} // namespace

TEST_CASE("a picture fitted into a movie keeps its shape and its colours, upright, with black beside") {
    const Folder folder;
    // Quarters: red and green above, blue and white below.
    const std::string quarters =
        "-f lavfi -i color=red:size=64x32:d=0.2 -f lavfi -i color=lime:size=64x32:d=0.2 "
        "-f lavfi -i color=blue:size=64x32:d=0.2 -f lavfi -i color=white:size=64x32:d=0.2 "
        "-filter_complex '[0][1]hstack[a];[2][3]hstack[b];[a][b]vstack";
    ffmpeg(quarters +
           ",scale=out_color_matrix=bt601,format=yuv420p' -colorspace smpte170m -c:v libx264 -crf 1 " +
           quoted(folder / "601.mp4"));
    ffmpeg(quarters +
           ",scale=out_color_matrix=bt709,format=yuv420p' -colorspace bt709 -color_primaries bt709 "
           "-color_trc bt709 -c:v libx264 -crf 1 " +
           quoted(folder / "709.mp4"));
    ffmpeg(quarters + "' -pix_fmt yuvj422p -c:v mjpeg -q:v 1 " + quoted(folder / "full.mov"));
    ffmpeg(quarters + "' -pix_fmt rgb24 -c:v png " + quoted(folder / "rgb.mov"));
    ffmpeg("-i " + quoted(folder / "601.mp4") + " -c copy -metadata:s:v rotate=90 " +
           quoted(folder / "turned.mp4"));
    ffmpeg("-i " + quoted(folder / "turned.mp4") + " -c:v libx264 -crf 1 " + quoted(folder / "upright.mkv"));

    for (const char* file : {"601.mp4", "709.mp4", "full.mov", "rgb.mov"}) {
        INFO(file);
        copy_first(folder / file, folder / "out.mp4", 128, 64); // as large as it is: not scaled
        const Seen same(folder / "out.mp4", folder, 128);
        CHECK(std::vector{same(32, 16), same(96, 16), same(32, 48), same(96, 48)} ==
              std::vector{0xFF0000, 0x00FF00, 0x0000FF, 0xFFFFFF});
        copy_first(folder / file, folder / "out.mkv", 60, 80); // 60 x 30 of it the picture
        const Seen small(folder / "out.mkv", folder, 60);
        CHECK(std::vector{small(15, 32), small(45, 32), small(15, 48), small(45, 48)} ==
              std::vector{0xFF0000, 0x00FF00, 0x0000FF, 0xFFFFFF});
        CHECK(std::vector{small(30, 4), small(3, 20), small(57, 60), small(30, 77)} ==
              std::vector{0, 0, 0, 0});
    }
    // What the stream says of its colours is handed on.
    copy_first(folder / "709.mp4", folder / "out.mp4", 128, 64);
    CHECK(ffprobe(folder / "out.mp4", "v", "stream=color_space") == std::vector<std::string>{"bt709"});

    // Turned pictures: ffmpeg turns them itself when it converts, an independent reading of the same matrix.
    copy_first(folder / "turned.mp4", folder / "out.mp4", 200, 64); // 32 x 64 of it the picture
    copy_first(folder / "upright.mkv", folder / "out.mkv", 200, 64);
    const Seen turned(folder / "out.mp4", folder, 200), upright(folder / "out.mkv", folder, 200);
    for (const auto& [x, y] : {std::pair{92, 16}, {108, 16}, {92, 48}, {108, 48}, {70, 30}, {130, 30}})
        CHECK(turned(x, y) == upright(x, y));
    CHECK(turned(92, 16) != 0);
    CHECK(turned(92, 16) != turned(108, 48));
}

TEST_CASE("a movie's colours are made by the matrix that it says, of RGB recordings too") {
    const Folder folder;
    // Muted: pure colours come out nearly alike by the wrong matrix, being clipped.
    constexpr std::array<int, 3> kColour{0x20, 0xA0, 0x50};
    const std::string plain_colour = "-f lavfi -i color=0x20A050:size=64x48:d=0.2 -vf ";
    ffmpeg(plain_colour + "format=gbrp -c:v libx264rgb -crf 1 " + quoted(folder / "gbr.mkv"));
    CHECK(ffprobe(folder / "gbr.mkv", "v", "stream=pix_fmt,color_space") ==
          std::vector<std::string>{"gbrp", "gbr"});
    ffmpeg(plain_colour + "format=rgb24 -c:v png " + quoted(folder / "png.mov"));
    ffmpeg(plain_colour +
           "scale=out_color_matrix=bt601,format=yuv420p -colorspace smpte170m -c:v libx264 "
           "-crf 1 " +
           quoted(folder / "601.mp4"));
    ffmpeg(plain_colour +
           "scale=out_color_matrix=bt709,format=yuv420p -colorspace bt709 -c:v libx264 "
           "-crf 1 " +
           quoted(folder / "709.mp4"));
    for (const char* file : {"gbr.mkv", "png.mov", "601.mp4", "709.mp4"}) {
        copy_first(folder / file, folder / "out.mp4", 32, 24);
        ffmpeg("-i " + quoted(folder / "out.mp4") + " -frames:v 1 -f rawvideo -pix_fmt rgb24 " +
               quoted(folder / "seen.rgb"));
        const std::string rgb = read_all(folder / "seen.rgb");
        for (std::size_t c = 0; c < 3; ++c) {
            INFO(file << ", channel " << c);
            CHECK(static_cast<unsigned char>(rgb.at(3 * (12 * 32 + 16) + c)) == Approx(kColour[c]).margin(4));
        }
    }
}

TEST_CASE("a patch laid over a picture changes that one and none of its copies") {
    const Folder folder;
    MoviePicture one(plain(64, 48, 200));
    MoviePicture two = one;
    two.lay(MoviePicture(plain(16, 16, 20)), 9, 8); // x is rounded down to 8
    two.lay(MoviePicture(plain(16, 16, 90)), 56, -8);
    two.lay(MoviePicture(plain(16, 16, 90)), 64, 48); // wholly outside
    MovieFormat format;
    format.width = 64;
    format.height = 48;
    format.quick = true;
    for (const auto& [file, picture] : {std::pair{"one.mkv", one}, {"two.mkv", two}}) {
        const auto movie = write_movie(folder / file, format);
        movie->picture(picture);
        movie->sound(std::vector<float>(2 * 1920));
        movie->finish();
    }
    const Seen first(folder / "one.mkv", folder, 64);
    CHECK(std::vector{first(12, 12), first(60, 4)} == std::vector{0xC0C0C0, 0xC0C0C0});
    const Seen second(folder / "two.mkv", folder, 64);
    CHECK(std::vector{second(9, 9), second(22, 22), second(28, 16), second(60, 4), second(60, 12)} ==
          std::vector{0x000000, 0x000000, 0xC0C0C0, 0x404040, 0xC0C0C0});
    CHECK_THROWS_AS(MoviePicture::black(63, 48), Error);
    CHECK_THROWS_AS(MoviePicture(plain(64, 47, 0)), Error);
}

TEST_CASE("a movie's chapters lie where they were put") {
    const Folder folder;
    for (const char* name : {"a.mp4", "a.mkv", "a.mov"}) {
        INFO(name);
        MovieFormat format;
        format.width = 64;
        format.height = 48;
        format.chapters = {{Rational(0), Rational(1001, 3000), "Überall & \"nirgends\""},
                           {Rational(1001, 3000), Rational(1), "Two"}};
        const auto movie = write_movie(folder / name, format);
        for (int i = 0; i < 25; ++i)
            movie->picture(plain(64, 48, 100));
        movie->sound(std::vector<float>(2 * 48000));
        movie->finish();
        const auto said = ffprobe(folder / name, "", "chapter=start_time,end_time:chapter_tags=title");
        REQUIRE(said.size() == 6);
        CHECK(std::stod(said[0]) == 0);
        CHECK(std::stod(said[1]) == Approx(1001.0 / 3000).margin(0.001));
        CHECK(said[2] == "Überall & \"nirgends\"");
        CHECK(std::stod(said[3]) == Approx(1001.0 / 3000).margin(0.001));
        CHECK(said[5] == "Two");
        CHECK(movie->codecs().picture == "H.264");
        CHECK(movie->codecs().sound == "AAC");
    }
}

TEST_CASE("two programs can't write the same movie at once, and what a killed one left is written over") {
    const Folder folder;
    write_all(folder / "a.wav.luft-part", std::string(100'000, 'x')); // left by a killed program
    {
        const auto one = write_movie(folder / "a.wav", {});
        try {
            write_movie(folder / "a.wav", {});
            FAIL("nothing was thrown");
        } catch (const Error& e) {
            CHECK(e.fault() == Fault::busy);
        }
        one->sound(std::vector<float>(2 * 100));
        one->finish();
    }
    CHECK(folder.names() == std::vector<std::string>{"a.wav"});
    CHECK(hear(folder / "a.wav").count() == 100);
    // A link there isn't followed to what it points at.
    write_all(folder / "precious", "precious");
    std::filesystem::create_symlink(folder / "precious", folder / "b.wav.luft-part");
    CHECK_THROWS_AS(write_movie(folder / "b.wav", {}), Error);
    CHECK(read_all(folder / "precious") == "precious");
    // What isn't a file is no other writer, whatever went wrong before.
    REQUIRE(::mkfifo((folder / "c.wav.luft-part").c_str(), 0600) == 0);
    errno = EWOULDBLOCK;
    try {
        write_movie(folder / "c.wav", {});
        FAIL("nothing was thrown");
    } catch (const Error& e) {
        CHECK(e.fault() == Fault::cannot_write);
    }
    // An unfinished download of another program's is none of ours.
    write_all(folder / "d.wav.part", "half of it");
    const auto movie = write_movie(folder / "d.wav", {});
    movie->sound(std::vector<float>(2 * 100));
    movie->finish();
    CHECK(read_all(folder / "d.wav.part") == "half of it");
}
