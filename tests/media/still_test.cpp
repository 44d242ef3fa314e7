// Stills, read back by the ffmpeg program.
#include "media/still.h"
#include "media/tools.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>

using namespace luft;
using namespace luft::media;
using namespace luft::media::test;
using namespace luft::test;

namespace {

/// Red, green, blue and grey quarters over a slope, of an odd size.
Picture coloured() {
    Picture p{67, 49, Seconds(0), {}};
    for (int y = 0; y < p.height; ++y)
        for (int x = 0; x < p.width; ++x) {
            const auto slope = static_cast<std::uint8_t>(3 * x);
            const bool left = x < p.width / 2, top = y < p.height / 2;
            const std::array<std::uint8_t, 3> rgb =
                top ? (left ? std::array<std::uint8_t, 3>{255, 0, 0} : std::array<std::uint8_t, 3>{0, 255, 0})
                    : (left ? std::array<std::uint8_t, 3>{0, 0, 255}
                            : std::array<std::uint8_t, 3>{slope, slope, slope});
            p.rgb.insert(p.rgb.end(), rgb.begin(), rgb.end());
        }
    return p;
}

std::string pixels_of(const std::filesystem::path& file, const Folder& folder) {
    ffmpeg("-i " + quoted(file) + " -sws_flags accurate_rnd+full_chroma_int -f rawvideo -pix_fmt rgb24 " +
           quoted(folder / "raw"));
    return read_all(folder / "raw");
}

} // namespace

TEST_CASE("a PNG still has every pixel of its picture") {
    const Folder folder;
    const Picture picture = coloured();
    write_still(picture, folder / "a.png", StillKind::png);
    CHECK(ffprobe(folder / "a.png", "v", "stream=codec_name,width,height") ==
          std::vector<std::string>{"png", "67", "49"});
    const std::string read = pixels_of(folder / "a.png", folder);
    CHECK(std::equal(read.begin(), read.end(), picture.rgb.begin(), picture.rgb.end(),
                     [](char a, std::uint8_t b) { return static_cast<std::uint8_t>(a) == b; }));
}

TEST_CASE("a JPEG still has the colours of its picture, pure ones and the full range too") {
    const Folder folder;
    const Picture picture = coloured();
    write_still(picture, folder / "a.jpg", StillKind::jpeg);
    CHECK(ffprobe(folder / "a.jpg", "v", "stream=codec_name,width,height,pix_fmt") ==
          std::vector<std::string>{"mjpeg", "67", "49", "yuvj444p"});
    CHECK(read_all(folder / "a.jpg").substr(0, 11) == std::string("\xFF\xD8\xFF\xE0\0\x10JFIF\0", 11));
    const std::string read = pixels_of(folder / "a.jpg", folder);
    REQUIRE(read.size() == picture.rgb.size());
    for (const auto& [x, y] : {std::pair{10, 10}, {55, 10}, {10, 40}, {40, 40}, {60, 40}})
        for (std::size_t c = 0; c < 3; ++c) {
            const auto at = 3 * static_cast<std::size_t>(y * picture.width + x) + c;
            INFO(x << "," << y << "," << c);
            CHECK(std::abs(static_cast<std::uint8_t>(read[at]) - picture.rgb[at]) <= 4);
        }
}

TEST_CASE("a still that can't be written leaves nothing, and one without pixels is refused") {
    const Folder folder;
    CHECK_THROWS_AS(write_still(coloured(), folder / "none/a.png", StillKind::png), Error);
    CHECK_THROWS_AS(write_still(Picture{}, folder / "a.png", StillKind::png), Error);
    Picture torn = coloured();
    torn.rgb.pop_back();
    CHECK_THROWS_AS(write_still(torn, folder / "a.jpg", StillKind::jpeg), Error);
    CHECK(folder.names().empty());
}
