// The guide as a file: what is in it, and what is there when it isn't finished.
#include "guide/guide.h"
#include "guide/programme.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>
#include <sys/wait.h>
#include <unistd.h>

#include <cmath>
#include <csignal>
#include <tuple>

using namespace luft;
using namespace luft::guide;
using namespace luft::guide::testing;
using namespace luft::test;

namespace {

/// Grey pictures of a movie, as the ffmpeg program decodes them.
std::vector<std::string> grey_pictures(const std::filesystem::path& movie, int width, int height) {
    const Folder folder;
    run("ffmpeg -nostdin -v error -i " + quoted(movie) +
        " -map 0:v -vsync passthrough -f rawvideo -pix_fmt gray " + quoted(folder / "g"));
    const std::string all = read_all(folder / "g");
    const auto one = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    std::vector<std::string> pictures;
    for (std::size_t at = 0; at + one <= all.size(); at += one)
        pictures.push_back(all.substr(at, one));
    return pictures;
}

/// Mean difference of a part of two pictures, in grey levels.
double difference(const std::string& a, const std::string& b, int width, int left, int top, int right,
                  int bottom) {
    double sum = 0;
    for (int y = top; y < bottom; ++y)
        for (int x = left; x < right; ++x) {
            const auto at = static_cast<std::size_t>(y * width + x);
            sum += std::abs(static_cast<unsigned char>(a[at]) - static_cast<unsigned char>(b[at]));
        }
    return sum / ((right - left) * (bottom - top));
}

} // namespace

TEST_CASE("the guide holds its chapters, its length and its codecs, and says so") {
    const Folder folder;
    record(folder / "in.mp4", Rational(30000, 1001));
    const std::string before = read_all(folder / "in.mp4");
    auto script = items();
    script[0].rehearsed = Seconds(10.5);
    script[1].rehearsed = Seconds(11);
    script[3].rehearsed = Seconds(10.2);
    const Programme p = programme(folder / "in.mp4", script, Rational(30000, 1001));
    for (const char* name : {"out.mp4", "out.mkv"}) {
        INFO(name);
        const Report report = write_guide(p.material(), folder / name, {});
        CHECK(report.length == p.sheet.running_time);
        CHECK(std::pair(report.width, report.height) == std::pair(kWidth, kHeight));
        CHECK(report.codecs.picture == "H.264");
        CHECK(report.codecs.sound == "AAC");
        CHECK(std::stod(probed(folder / name, "-show_entries format=duration").at(0)) ==
              Approx(p.sheet.running_time.as_double()).margin(0.03));
        const auto starts = probed(folder / name, "-show_entries chapter=start_time");
        const auto titles = probed(folder / name, "-show_entries chapter_tags=title");
        REQUIRE(titles.size() == 4);
        CHECK(titles[0] == "Opening");
        CHECK(titles[1] == "Harbour Lamps; Stop 1: words to speak"); // 2 s after: it shares the chapter
        CHECK(titles[2].find("Stop 2") == 0);
        REQUIRE(starts.size() == 4);
        CHECK(std::stod(starts[0]) == 0);
        CHECK(std::stod(starts[1]) ==
              Approx(segment(p, script::SegmentKind::play, 0).programme_start.as_double()).margin(0.001));
        CHECK(std::stod(starts[2]) ==
              Approx(segment(p, script::SegmentKind::talk, 2).programme_start.as_double()).margin(0.001));
    }
    CHECK(read_all(folder / "in.mp4") == before);
}

TEST_CASE("a guide that is stopped leaves nothing, and what was there stays") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    write_all(folder / "out.mp4", "what was there");
    const Programme p = programme(folder / "in.mp4", items(), 25);
    for (const double share : {0.0, 0.4, 0.99}) {
        std::stop_source stop;
        const Progress progress(
            [&](double done, std::string_view) {
                if (done >= share) stop.request_stop();
            },
            stop.get_token());
        CHECK_THROWS_AS(write_guide(p.material(), folder / "out.mp4", {}, progress), Stopped);
        CHECK(read_all(folder / "out.mp4") == "what was there");
        CHECK(folder.names() == std::vector<std::string>{"in.mp4", "out.mp4"});
    }
}

TEST_CASE("a guide killed on the way leaves nothing under its name, and the next one clears up") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    const Programme p = programme(folder / "in.mp4", items(), 25);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        const Progress deadly([](double done, std::string_view) {
            if (done > 0.6) ::raise(SIGKILL);
        });
        write_guide(p.material(), folder / "out.mp4", {}, deadly);
        ::_exit(0);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    REQUIRE(WIFSIGNALED(status));
    CHECK(folder.names() == std::vector<std::string>{"in.mp4", "out.mp4.luft-part"});
    write_guide(p.material(), folder / "out.mp4", {});
    CHECK(folder.names() == std::vector<std::string>{"in.mp4", "out.mp4"});
}

TEST_CASE("what can't be made is refused, and leaves nothing behind") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    const Programme p = programme(folder / "in.mp4", items(), 25);
    for (const auto& [width, height] : {std::pair{63, 48}, {64, 0}, {0, 48}, {64, 47}}) {
        Options odd;
        odd.width = width;
        odd.height = height;
        CHECK_THROWS_AS(write_guide(p.material(), folder / "out.mp4", odd), Error);
    }
    CHECK_THROWS_AS(write_guide(p.material(), folder / "out.xyz", {}), Error);
    CHECK_THROWS_AS(write_guide(p.material(), folder / "none" / "out.mp4", {}), Error);
    Programme empty = p;
    empty.sheet = {};
    CHECK_THROWS_AS(write_guide(empty.material(), folder / "out.mp4", {}), Error);
    CHECK(folder.names() == std::vector<std::string>{"in.mp4"});
}

TEST_CASE("slate and timecode are written into the picture, and nowhere else") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    auto script = items();
    script.resize(2); // opening and one stop
    const Programme p = programme(folder / "in.mp4", script, 25);
    constexpr int kWide = 320, kHigh = 240;
    Options plain;
    plain.width = kWide;
    plain.height = kHigh;
    Options labelled = plain;
    labelled.slate = labelled.timecode = true;
    write_guide(p.material(), folder / "plain.mkv", plain);
    write_guide(p.material(), folder / "labelled.mkv", labelled);
    const auto without = grey_pictures(folder / "plain.mkv", kWide, kHigh);
    const auto with = grey_pictures(folder / "labelled.mkv", kWide, kHigh);
    REQUIRE(without.size() == with.size());
    const auto frame = [](Rational t) { return static_cast<std::size_t>((t * Rational(25)).round()); };
    const std::size_t talk = frame(segment(p, script::SegmentKind::talk, 1).programme_start);
    const std::size_t play = frame(segment(p, script::SegmentKind::play, 1).programme_start) + 5;
    const auto upper = [&](std::size_t k) { return difference(with[k], without[k], kWide, 12, 12, 70, 30); };
    const auto lower = [&](std::size_t k) {
        return difference(with[k], without[k], kWide, kWide - 120, kHigh - 25, kWide - 12, kHigh - 12);
    };
    const auto rest = [&](std::size_t k) {
        return difference(with[k], without[k], kWide, 0, 80, kWide, kHigh - 40);
    };
    CHECK(upper(talk + 3) > 20);
    CHECK(upper(play) < 6);
    for (const std::size_t k : {std::size_t{3}, talk + 3, play}) {
        CHECK(lower(k) > 15);
        CHECK(rest(k) < 6);
    }
    // Frame after frame another figure, though the picture stands.
    CHECK(difference(with[talk + 3], with[talk + 4], kWide, kWide - 120, kHigh - 25, kWide - 12, kHigh - 12) >
          0.5);
    CHECK(difference(with[talk + 3], with[talk + 4], kWide, 0, 0, kWide, kHigh - 40) < 2);
}

TEST_CASE("a guide is as large as its video, but no larger than a screen of 720 lines, upright or not") {
    const Folder folder;
    for (const auto& [size, width, height] : {std::tuple{"1920x1080", 1280, 720},
                                              {"1080x1920", 720, 1280},
                                              {"350x197", 350, 198},
                                              {"1500x300", 1280, 256}}) {
        INFO(size);
        run("ffmpeg -nostdin -v error -y -f lavfi -i testsrc=size=" + std::string(size) +
            ":rate=25:duration=0.2 -f lavfi -i sine=duration=0.2 -pix_fmt yuv444p -c:v libx264 -preset "
            "ultrafast " +
            quoted(folder / "in.mkv"));
        const Programme p = programme(folder / "in.mkv", {}, 25);
        const Report report = write_guide(p.material(), folder / "out.mkv", {});
        CHECK(std::pair(report.width, report.height) == std::pair(width, height));
        CHECK(probed(folder / "out.mkv", "-select_streams v -show_entries stream=width,height") ==
              std::vector{std::to_string(width), std::to_string(height)});
    }
}

TEST_CASE("a recording without a picture shows its sheet, with the playhead going along") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    run("ffmpeg -nostdin -v error -i " + quoted(folder / "in.mp4") + " -vn -c:a copy " +
        quoted(folder / "in.m4a"));
    Programme p = programme(folder / "in.m4a", items(), 25);
    p.song.marks = {script::testing::phrase(1, 1, 4), script::testing::note(2, 1, 2.5),
                    script::testing::note(3, 2.6, 4), script::testing::phrase(4, 5, 9),
                    script::testing::note(5, 5, 9)};
    Options small;
    small.width = 320;
    small.height = 180;
    write_guide(p.material(), folder / "small.mkv", small);
    const auto pictures = grey_pictures(folder / "small.mkv", 320, 180);
    REQUIRE(pictures.size() == static_cast<std::size_t>((p.sheet.running_time * Rational(25)).round()));
    const auto paper = static_cast<unsigned char>(pictures[0].back());
    CHECK(paper > 225); // light
    // In a talk nothing moves; in a play the playhead does.
    const auto whole = [&](std::size_t a, std::size_t b) {
        return difference(pictures[a], pictures[b], 320, 0, 0, 320, 180);
    };
    CHECK(whole(2, 12) < 0.2);
    CHECK(whole(16 + 26, 16 + 48) > 0.3); // 1.04 s and 1.92 s of the recording

    run("ffmpeg -nostdin -v error -i " + quoted(folder / "in.m4a") + " -t 0.5 -c:a copy " +
        quoted(folder / "short.m4a"));
    const Programme brief = programme(folder / "short.m4a", {}, 25); // and without a mark
    const Report report = write_guide(brief.material(), folder / "out.mp4", {});
    CHECK(std::pair(report.width, report.height) == std::pair(1280, 720));
}
