// The pictures that stand at the stops: videos whose every frame carries its number as black and white
// blocks, made and read by the ffmpeg program.
#include "export/stills.h"
#include "media/media.h"
#include "script/script_material.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::exports;

namespace {

constexpr int kBits = 8, kBlock = 16;

/// `vf` and what follows it make the file out of frames that carry their number, the lowest bit at the left.
void make_video(const std::filesystem::path& file, const std::string& rate, int frames,
                const std::string& options) {
    test::run("ffmpeg -nostdin -v error -f lavfi -i \"nullsrc=size=128x32:rate=" + rate +
              ",format=yuv420p,geq=lum='if(mod(floor(N/pow(2,floor(X/16))),2),235,16)':cb=128:cr=128\" "
              "-frames:v " +
              std::to_string(frames) + " " + options + " " + test::quoted(file));
}

int number_on(const std::filesystem::path& still) {
    const test::Folder folder;
    test::run("ffmpeg -nostdin -v error -i " + test::quoted(still) + " -f rawvideo -pix_fmt gray " +
              test::quoted(folder / "raw"));
    const std::string grey = test::read_all(folder / "raw");
    REQUIRE(grey.size() == 128 * 32);
    int number = 0;
    for (int bit = 0; bit < kBits; ++bit)
        if (static_cast<std::uint8_t>(grey[16 * 128 + static_cast<std::size_t>(bit * kBlock + kBlock / 2)]) >
            128)
            number += 1 << bit;
    return number;
}

/// A script on the video that halts at these programme frames; the programme's rate is found out by itself.
script::Source halting(const std::filesystem::path& video, Rational rate, const std::vector<int>& frames) {
    script::Source source;
    const auto facts = media::probe(open_file(video));
    REQUIRE(facts.video);
    source.performance.facts = {
        facts.duration, 0, 0, true, facts.video->frame_rate.num(), facts.video->frame_rate.den()};
    for (const int frame : frames)
        source.items.push_back(script::testing::item(static_cast<std::int64_t>(source.items.size()) + 1,
                                                     project::ScriptItemKind::stop,
                                                     (Rational(frame) / rate).as_double(), "here"));
    return source;
}

std::vector<int> numbers(const std::filesystem::path& video, const script::Source& source,
                         media::StillKind kind = media::StillKind::png) {
    const test::Folder folder;
    std::vector<int> found;
    for (const auto& file : stills(
             source, script::lay_out(source), [&] { return open_file(video); }, folder / "stills", kind))
        found.push_back(number_on(file));
    return found;
}

} // namespace

TEST_CASE("a stop's still is the programme frame that stands there, at every rate, also where times are "
          "counted in milliseconds") {
    const test::Folder folder;
    const std::vector<int> at = {0, 1, 2, 7, 29, 31, 58, 89, 119};
    for (const auto& [rate, exact] : {std::pair{"24000/1001", Rational(24000, 1001)},
                                      {"25", Rational(25)},
                                      {"30000/1001", Rational(30000, 1001)},
                                      {"60000/1001", Rational(60000, 1001)}})
        for (const char* name : {"a.mp4", "a.mkv"}) { // Matroska counts milliseconds
            INFO(rate << " " << name);
            std::filesystem::remove(folder / name);
            make_video(folder / name, rate, 120, "-c:v libx264 -bf 2 -g 30");
            const auto source = halting(folder / name, exact, at);
            REQUIRE(script::lay_out(source).frame_rate == exact);
            CHECK(numbers(folder / name, source) == at);
        }
}

TEST_CASE("of a video with a varying rate the still is the picture in the middle of the programme's frame") {
    const test::Folder folder;
    // Each second picture is 13 ms late: picture n stands from 40 n ms, or from 40 n + 13 ms.
    make_video(folder / "a.mkv", "25", 100,
               "-vf \"setpts='N/25/TB+if(mod(N,2),0.013/TB,0)'\" -fps_mode passthrough -c:v libx264 -bf 0");
    const auto late = halting(folder / "a.mkv", 25, {0, 1, 2, 3, 50, 51, 99});
    REQUIRE(script::lay_out(late).frame_rate == Rational(25));
    CHECK(numbers(folder / "a.mkv", late) == std::vector<int>{0, 1, 2, 3, 50, 51, 99});
    // Every third picture is missing: the one before it stands on.
    make_video(folder / "b.mkv", "25", 100,
               "-vf \"select='mod(n,3)-2'\" -fps_mode passthrough -c:v libx264 -bf 0");
    auto lacking = halting(folder / "b.mkv", 25, {0, 1, 2, 3, 5, 98});
    lacking.settings.frame_rate_num = 25;
    CHECK(numbers(folder / "b.mkv", lacking) == std::vector<int>{0, 1, 1, 3, 4, 97});
}

TEST_CASE("a stop at or behind the recording's end has its last picture") {
    const test::Folder folder;
    make_video(folder / "a.mp4", "25", 50, "-c:v libx264");
    CHECK(numbers(folder / "a.mp4", halting(folder / "a.mp4", 25, {49, 50, 60})) ==
          std::vector<int>{49, 49, 49});
}

TEST_CASE("stills can be JPEG, and are named by their stops; those of a run with more stops go") {
    const test::Folder folder;
    make_video(folder / "a.mp4", "25", 50, "-c:v libx264");
    const auto open = [&] { return open_file(folder / "a.mp4"); };
    for (const char* name : {"stop-03.jpg", "stop-12.jpg", "stop-12.png", "my stop-12.jpg"}) {
        std::filesystem::create_directories(folder / "stills");
        test::write_all(folder / "stills" / name, "x");
    }
    const auto source = halting(folder / "a.mp4", 25, {10, 37});
    const auto files =
        stills(source, script::lay_out(source), open, folder / "stills", media::StillKind::jpeg);
    REQUIRE(files.size() == 2);
    CHECK(files[1] == folder / "stills/stop-02.jpg");
    CHECK(number_on(files[0]) == 10);
    CHECK(number_on(files[1]) == 37);
    CHECK(folder.names() == std::vector<std::string>{"a.mp4", "stills", "stills/my stop-12.jpg",
                                                     "stills/stop-01.jpg", "stills/stop-02.jpg",
                                                     "stills/stop-12.png"});
    auto none = source;
    none.items.clear();
    CHECK(stills(none, script::lay_out(none), open, folder / "stills", media::StillKind::jpeg).empty());
    CHECK_FALSE(std::filesystem::exists(folder / "stills/stop-01.jpg"));
}

TEST_CASE("a recording without a picture has no stills, and isn't opened for them") {
    const test::Folder folder;
    auto source = script::testing::material();
    source.items = {script::testing::item(1, project::ScriptItemKind::stop, 5, "here")};
    const OpenRecording never = []() -> std::unique_ptr<ByteSource> { throw std::logic_error("opened"); };
    CHECK(stills(source, script::lay_out(source), never, folder / "stills", media::StillKind::png).empty());
    CHECK(folder.names().empty());
}
