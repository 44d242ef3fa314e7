// What stands, how long, and where it goes on: every picture of a guide, decoded by the ffmpeg program.
#include "guide/guide.h"
#include "guide/programme.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace luft;
using namespace luft::guide;
using namespace luft::guide::testing;
using namespace luft::test;

namespace {

/// The middle of each programme frame's time, in the recording: the cue sheet read anew. The closing halts at
/// the recording's end, where its last frame is what stands.
std::vector<Rational> middles(const Programme& p) {
    std::vector<Rational> out;
    for (const script::Segment& s : p.sheet.segments) {
        const Rational rate = p.sheet.frame_rate;
        const auto frames = ((s.programme_end - s.programme_start) * rate).round();
        const bool at_end = &s == &p.sheet.segments.back();
        for (std::int64_t k = 0; k < frames; ++k) {
            const bool talk = s.kind == script::SegmentKind::talk;
            const Rational on = at_end ? Rational(-1, 2)
                                : talk ? Rational(1, 2)
                                       : (Rational(k) + Rational(1, 2)) * s.speed;
            out.push_back(s.media_start + on / rate);
        }
    }
    return out;
}

std::vector<int> repeated(int count, int value) {
    return std::vector<int>(static_cast<std::size_t>(count), value);
}

/// `from` up to but not `to`, each `times`.
std::vector<int> running(int from, int to, int times = 1) {
    std::vector<int> out;
    for (int n = from; n < to; ++n)
        out.insert(out.end(), static_cast<std::size_t>(times), n);
    return out;
}

std::vector<int> joined(const std::vector<std::vector<int>>& parts) {
    std::vector<int> out;
    for (const auto& part : parts)
        out.insert(out.end(), part.begin(), part.end());
    return out;
}

/// The first frames that differ, as a text; empty when none does. Catch would print both lists whole.
std::string differences(const std::vector<int>& shown, const std::vector<int>& expected) {
    std::string text;
    if (shown.size() != expected.size())
        text = std::to_string(shown.size()) + " frames instead of " + std::to_string(expected.size()) + "; ";
    int told = 0;
    for (std::size_t k = 0; k < std::min(shown.size(), expected.size()) && told < 10; ++k)
        if (shown[k] != expected[k]) {
            ++told;
            text += "frame " + std::to_string(k) + " is " + std::to_string(shown[k]) + ", not " +
                    std::to_string(expected[k]) + "; ";
        }
    return text;
}

} // namespace

TEST_CASE("at 25 frames a second every picture is the one that was counted by hand") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    const Programme p = programme(folder / "in.mp4", items(), 25);
    write_guide(p.material(), folder / "out.mp4", {});
    // Talks last 0.61, 0.83, 0.7, 1.2 and 0.5 s, rounded up to frames: 16, 21, 18, 30, 13. Stops
    // at 2.013, 4.487 and 7.111 s lie nearest to frames 50, 112 and 178; going on at 1.5 and 8.52 s is at 38
    // and 213; the replay from 3.05 to 3.95 s is 76 to 99, each twice.
    const std::vector<int> expected = joined(
        {repeated(16, 0), running(0, 50), repeated(21, 50), running(38, 112), repeated(18, 112),
         running(76, 99, 2), running(112, 178), repeated(30, 178), running(213, 250), repeated(13, 249)});
    CHECK(differences(numbers_in(folder / "out.mp4"), expected) == "");
}

TEST_CASE("a replay ends with its span's last picture, also where its speed leaves a part of a frame over") {
    const Folder folder;
    record(folder / "in.mp4", 25);
    auto script = items();
    script[2].replay = Span{Seconds(3.04), Seconds(3.44)}; // frames 76 to 86
    script[2].replay_speed = 0.75;                         // 13 1/3 frames
    script[3].replay = Span{Seconds(5.2), Seconds(5.64)};  // frames 130 to 141
    script[3].replay_speed = 0.35;                         // 31 3/7 frames
    const Programme p = programme(folder / "in.mp4", script, 25);
    write_guide(p.material(), folder / "out.mp4", {});
    const std::vector<int> shown = numbers_in(folder / "out.mp4");
    const auto replay = [&](int n) {
        const script::Segment& s = segment(p, script::SegmentKind::replay, n);
        const auto frame = [](Rational t) { return (t * Rational(25)).round(); };
        return std::vector<int>(shown.begin() + frame(s.programme_start),
                                shown.begin() + frame(s.programme_end));
    };
    // Frame k shows picture (k + 1/2) * speed of the span.
    CHECK(differences(replay(0), {76, 77, 77, 78, 79, 80, 80, 81, 82, 83, 83, 84, 85, 85}) == "");
    CHECK(differences(replay(1), joined({running(130, 133, 3), repeated(2, 133), running(134, 141, 3)})) ==
          "");
}

TEST_CASE("at every rate and in every container the picture is the cue sheet's, to the frame") {
    struct Case {
        Rational rate;
        const char *in, *out;
    };
    const auto c = GENERATE(values<Case>({{Rational(24000, 1001), "in.mkv", "out.mp4"},
                                          {Rational(30000, 1001), "in.mp4", "out.mkv"},
                                          {Rational(60000, 1001), "in.mkv", "out.mov"},
                                          {50, "in.mkv", "out.mkv"}}));
    INFO(c.rate.num() << "/" << c.rate.den());
    const Folder folder;
    record(folder / c.in, c.rate);
    const Programme p = programme(folder / c.in, items(), c.rate);
    write_guide(p.material(), folder / c.out, {});
    std::vector<int> expected;
    for (const Rational t : middles(p))
        expected.push_back(static_cast<int>((t * c.rate).floor()));
    CHECK(differences(numbers_in(folder / c.out), expected) == "");

    // Each at its time: MP4 exactly, Matroska to its millisecond.
    const auto stamps = probed(folder / c.out, "-select_streams v -show_entries packet=pts_time");
    REQUIRE(stamps.size() == expected.size());
    for (std::size_t k = 0; k < stamps.size(); ++k)
        REQUIRE(std::stod(stamps[k]) ==
                Approx((Rational(static_cast<std::int64_t>(k)) / c.rate).as_double()).margin(0.00051));
}

TEST_CASE("a recording of another rate shows what is on its screen in the middle of each frame's time") {
    const Folder folder;
    record(folder / "in.mp4", Rational(30000, 1001));
    const Programme p = programme(folder / "in.mp4", items(), 25);
    write_guide(p.material(), folder / "out.mkv", {});
    std::vector<int> expected;
    for (const Rational t : middles(p))
        expected.push_back(
            std::min(static_cast<int>((t * Rational(30000, 1001)).floor()), 298)); // the last one
    CHECK(differences(numbers_in(folder / "out.mkv"), expected) == "");
}

TEST_CASE("where the recording's rate varies, each picture stands until the next one is due") {
    const Folder folder;
    record(folder / "even.mp4", 25);
    // Picture n at 0.02 n + 0.0002 n^2 seconds: first nearly 50 a second, at the end under 9.
    for (const char* name : {"in.mp4", "in.mkv"}) {
        INFO(name);
        run("ffmpeg -nostdin -v error -y -i " + quoted(folder / "even.mp4") +
            " -vf \"setpts='(0.02*N+0.0002*N*N)/TB'\" -vsync passthrough -enc_time_base 1:90000 -c:v libx264 "
            "-crf 10 -bf 0 -c:a "
            "copy " +
            quoted(folder / name));
        std::vector<double> stamps;
        for (const std::string& s : probed(folder / name, "-select_streams v -show_entries packet=pts_time"))
            stamps.push_back(std::stod(s));
        REQUIRE(stamps.size() == 250);
        CHECK(stamps[10] - stamps[9] < 0.03);
        CHECK(stamps[249] - stamps[248] > 0.1);

        Programme p = programme(folder / name, items(), 25);
        write_guide(p.material(), folder / "out.mkv", {});
        const std::vector<int> shown = numbers_in(folder / "out.mkv");
        const std::vector<Rational> due = middles(p);
        REQUIRE(shown.size() == due.size());
        int checked = 0;
        for (std::size_t k = 0; k < due.size(); ++k) {
            const double t = due[k].as_double();
            std::size_t n = 0;
            while (n < 249 && stamps[n + 1] <= t)
                ++n;
            // A stamp may be rounded by a millisecond: a picture due that soon after may be shown.
            if (n < 249 && stamps[n + 1] - t < 0.0011) continue;
            ++checked;
            INFO("frame " << k << " at " << t);
            REQUIRE(shown[k] == static_cast<int>(n));
        }
        CHECK(checked > 0.9 * static_cast<double>(due.size()));
    }
}
