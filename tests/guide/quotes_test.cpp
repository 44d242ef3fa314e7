// Another performance in the guide: its pictures and its sound where the cue sheet quotes it, decoded by the
// ffmpeg program. Black and white are swapped in its pictures and its sound is upside down, so that nothing
// of one recording passes for the other.
#include "guide/guide.h"
#include "guide/programme.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace luft;
using namespace luft::guide;
using namespace luft::guide::testing;
using namespace luft::test;
using script::SegmentKind;

namespace {

constexpr int kSwapped = (1 << 12) - 1; ///< a number and its swapped picture add up to it

/// The other recording out of the first one, by the ffmpeg program (MP4, whose clock it keeps).
void record_other(const std::filesystem::path& file, Rational frame_rate, const std::string& more) {
    const Folder folder;
    record(folder / "plain.mp4", frame_rate);
    run("ffmpeg -nostdin -v error -y -i " + quoted(folder / "plain.mp4") +
        " -af \"aeval='-val(0)|-val(1)'\" " + more + " " + quoted(file));
}

const char* const kPictures =
    "-vf negate,scale=128:96:flags=neighbor -c:v libx264 -crf 5 -c:a flac -ar 44100";

/// Two stops that quote 1.3 s from 5.041 s on and, at half speed, 0.9 s from 3.05 s on.
std::vector<project::ScriptItem> quoting() {
    std::vector<project::ScriptItem> all{spoken(1, ScriptItemKind::stop, 2.013, 0.83),
                                         spoken(2, ScriptItemKind::stop, 4.487, 0.7)};
    all[0].quote = project::Quote{{2}, {Seconds(5.041), Seconds(6.341)}};
    all[1].quote = project::Quote{{2}, {Seconds(3.05), Seconds(3.95)}};
    all[1].replay = Span{Seconds(3.05), Seconds(3.95)};
    all[1].replay_speed = 0.5;
    return all;
}

/// The programme on `folder`/in.mkv, which quotes `other`.
struct Quoting {
    Programme p;
    std::filesystem::path other;

    Quoting(const std::filesystem::path& in, const std::filesystem::path& quoted, Rational frame_rate)
        : p(programme(in, {}, frame_rate)), other(quoted) {
        script::Other b;
        b.performance.id = {2};
        b.performance.label = "B";
        b.performance.performer = "Ilse Brandt";
        b.performance.facts.duration = media::probe(open_file(other)).duration;
        p.source.others = {b};
        p.source.items = quoting();
        p.sheet = script::lay_out(p.source);
    }

    [[nodiscard]] Material material() const {
        Material m = p.material();
        m.quoted = {{{2},
                     [this] { return open_file(other); },
                     [this] {
                         profile::Source song;
                         song.piece = p.source.piece;
                         song.performance = p.source.others[0].performance;
                         return song;
                     }}};
        return m;
    }
};

std::size_t frame_at(const Programme& p, Rational t) {
    return static_cast<std::size_t>((t * p.sheet.frame_rate).round());
}

} // namespace

TEST_CASE("a quote shows the other recording's pictures, whatever its size and rate, and then the own ones") {
    const auto rates = GENERATE(values<std::pair<Rational, Rational>>(
        {{25, 25}, {25, Rational(30000, 1001)}, {Rational(30000, 1001), 25}, {Rational(24000, 1001), 50}}));
    const auto [own, other] = rates;
    INFO(own.as_double() << " and " << other.as_double());
    const Folder folder;
    record(folder / "in.mkv", own);
    record_other(folder / "other.mkv", other, kPictures);
    const Quoting q(folder / "in.mkv", folder / "other.mkv", own);
    write_guide(q.material(), folder / "out.mkv", {});
    const std::vector<int> shown = numbers_in(folder / "out.mkv");
    REQUIRE(shown.size() == frame_at(q.p, q.p.sheet.running_time));
    int quoted_frames = 0;
    for (const script::Segment& s : q.p.sheet.segments) {
        const std::size_t from = frame_at(q.p, s.programme_start), to = frame_at(q.p, s.programme_end);
        for (std::size_t k = from; k < to; ++k) {
            const Rational half(1, 2);
            const Rational on = s.kind == SegmentKind::talk
                                    ? half
                                    : (Rational(static_cast<std::int64_t>(k - from)) + half) * s.speed;
            const Rational middle = s.media_start + on / own;
            INFO("frame " << k << ", kind " << static_cast<int>(s.kind));
            if (s.kind != SegmentKind::quote) {
                REQUIRE(shown[k] == static_cast<int>((middle * own).floor()));
                continue;
            }
            ++quoted_frames;
            // Matroska rounds to a millisecond: right at the border either picture may be shown.
            const Rational place = middle * other;
            const double border = std::abs(place.as_double() - std::round(place.as_double()));
            const int number = kSwapped - shown[k];
            if (border > 0.001 * other.as_double())
                REQUIRE(number == static_cast<int>(place.floor()));
            else
                REQUIRE(std::abs(number - static_cast<int>(place.round())) <= 1);
        }
    }
    CHECK(quoted_frames > 60);
}

TEST_CASE("a quote sounds from its exact place in the other recording, at that one's own level") {
    const Folder folder;
    record(folder / "in.mkv", 25);
    record_other(folder / "other.mkv", Rational(30000, 1001), kPictures);
    const Quoting q(folder / "in.mkv", folder / "other.mkv", 25);
    write_guide(q.material(), folder / "out.mkv", {});
    const std::vector<float> heard = sound_in(folder / "out.mkv");
    std::vector<float> other;
    for (const float s : sound())
        other.push_back(-s);
    const script::Segment& plain = segment(q.p, SegmentKind::quote, 0);
    const double from = plain.programme_start.as_double(), to = plain.programme_end.as_double();
    const double media = plain.media_start.as_double(), length = to - from;
    CHECK(std::abs(lateness(heard, from + 0.01, other, media + 0.01)) < 0.001);
    CHECK(std::abs(lateness(heard, to - 0.12, other, media + length - 0.12)) < 0.001);
    CHECK(level(heard, from + 0.1, to - 0.1) ==
          Approx(level(other, media + 0.1, media + length - 0.1)).epsilon(0.05));
    // What follows is the recording again, where it halted.
    const script::Segment& on = segment(q.p, SegmentKind::play, 1);
    CHECK(std::abs(lateness(heard, on.programme_start.as_double() + 0.01, sound(),
                            on.media_start.as_double() + 0.01)) < 0.001);
}

TEST_CASE("a slowed quote keeps its pitch and level, and its replay follows it") {
    const Folder folder;
    record(folder / "in.mkv", 25);
    record_other(folder / "other.wav", 25, "-vn -ar 22050 -ac 1");
    const Quoting q(folder / "in.mkv", folder / "other.wav", 25);
    write_guide(q.material(), folder / "out.mkv", {});
    const std::vector<float> heard = sound_in(folder / "out.mkv");
    for (const SegmentKind kind : {SegmentKind::quote, SegmentKind::replay}) {
        const script::Segment& s = segment(q.p, kind, kind == SegmentKind::quote ? 1 : 0);
        const double from = s.programme_start.as_double(), to = s.programme_end.as_double();
        CHECK(to - from == Approx(1.84)); // frames 76 to 99, each twice
        CHECK(tone(heard, kToneHertz, from + 0.3, to - 0.3) == Approx(0.25).epsilon(0.1));
        CHECK(tone(heard, kToneHertz / 2, from + 0.3, to - 0.3) < 0.01);
    }
}

TEST_CASE("a quoted recording without a picture shows its sheet, and only while it is quoted") {
    const Folder folder;
    record(folder / "in.mkv", 25);
    record_other(folder / "other.wav", 25, "-vn");
    const Quoting q(folder / "in.mkv", folder / "other.wav", 25);
    write_guide(q.material(), folder / "out.mkv", {});
    run("ffmpeg -nostdin -v error -i " + quoted(folder / "out.mkv") +
        " -map 0:v -vsync passthrough -f rawvideo -pix_fmt gray " + quoted(folder / "grey"));
    const std::string grey = read_all(folder / "grey");
    const auto paper = [&](std::size_t frame) { // the part of a picture that is light
        int light = 0;
        for (std::size_t i = 0; i < kWidth * kHeight; ++i)
            light += static_cast<unsigned char>(grey.at(frame * kWidth * kHeight + i)) > 180 ? 1 : 0;
        return static_cast<double>(light) / (kWidth * kHeight);
    };
    const script::Segment& s = segment(q.p, SegmentKind::quote, 0);
    const std::size_t from = frame_at(q.p, s.programme_start), to = frame_at(q.p, s.programme_end);
    for (const std::size_t frame : {from, to - 1})
        CHECK(paper(frame) > 0.85);
    for (const std::size_t frame : {from - 1, to})
        CHECK(paper(frame) < 0.7);
}

TEST_CASE("a quote without its recording is refused before the first frame, and nothing is left behind") {
    const Folder folder;
    record(folder / "in.mkv", 25);
    Quoting q(folder / "in.mkv", folder / "in.mkv", 25);
    int steps = 0;
    const Progress counting([&](double, std::string_view) { ++steps; });
    const auto refused = [&](const Material& m) {
        CHECK_THROWS_AS(write_guide(m, folder / "out.mkv", {}, counting), Error);
        CHECK(steps == 0);
        CHECK(folder.names() == std::vector<std::string>{"in.mkv"});
    };
    refused(q.p.material());
    q.other = folder / "gone.mkv";
    refused(q.material());
}

TEST_CASE("a quote of a video with another colour matrix keeps its colours") {
    const Folder folder;
    const auto film = [&](const char* name, const std::string& matrix) {
        run("ffmpeg -nostdin -v error -y -f lavfi -i color=c=0xC83C28:s=64x48:r=25:d=8 -f lavfi -i "
            "sine=d=8 -vf scale=out_color_matrix=" +
            matrix + ",format=yuv420p -colorspace " + matrix + " -color_primaries " + matrix +
            " -color_trc " + matrix + " -c:v libx264 -crf 5 -c:a flac " + quoted(folder / name));
    };
    film("in.mkv", "bt709");
    film("other.mkv", "smpte170m");
    const Quoting q(folder / "in.mkv", folder / "other.mkv", 25);
    write_guide(q.material(), folder / "out.mkv", {});
    run("ffmpeg -nostdin -v error -i " + quoted(folder / "out.mkv") +
        " -map 0:v -vsync passthrough -vf scale=in_color_matrix=bt709 -f rawvideo -pix_fmt rgb24 " +
        quoted(folder / "rgb"));
    const std::string rgb = read_all(folder / "rgb");
    const auto colour = [&](std::size_t frame, std::size_t part) {
        return int{
            static_cast<unsigned char>(rgb.at(3 * (frame * kWidth * kHeight + kWidth * 20 + 30) + part))};
    };
    const std::size_t frame = frame_at(q.p, segment(q.p, SegmentKind::quote, 0).programme_start) + 10;
    const int meant[] = {0xC8, 0x3C, 0x28};
    for (std::size_t part = 0; part < 3; ++part) {
        CHECK(std::abs(colour(5, part) - meant[part]) <= 4);
        CHECK(std::abs(colour(frame, part) - meant[part]) <= 4);
    }
}
