// WebVTT by the W3C's draft, read back by FFmpeg's own demuxer.
#include "base/text.h"
#include "export/captions.h"
#include "export/cue_material.h"
#include "export/webvtt.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <sstream>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;
using namespace luft::test;

namespace {

struct Read {
    double start = 0, end = 0;
    std::string text;
};

double seconds_of(const std::string& srt_time) { // HH:MM:SS,mmm
    return 3600 * std::stod(srt_time.substr(0, 2)) + 60 * std::stod(srt_time.substr(3, 2)) +
           std::stod(srt_time.substr(6, 2)) + std::stod(srt_time.substr(9, 3)) / 1000;
}

/// Cues as ffmpeg understood them, which it writes as SubRip: number, times, lines, empty line.
std::vector<Read> read_back(const std::string& vtt) {
    const Folder folder;
    write_all(folder / "captions.vtt", vtt);
    std::string srt = run("ffmpeg -nostdin -v error -i " + quoted(folder / "captions.vtt") + " -f srt -");
    std::erase(srt, '\r'); // it ends lines inside a cue with CR LF
    std::istringstream in(srt);
    std::vector<Read> out;
    std::string line;
    while (std::getline(in, line)) {
        if (line.empty()) continue;
        Read cue;
        REQUIRE(std::getline(in, line));
        REQUIRE(line.size() == 29);
        cue.start = seconds_of(line.substr(0, 12));
        cue.end = seconds_of(line.substr(17));
        while (std::getline(in, line) && !line.empty())
            cue.text += (cue.text.empty() ? "" : "\n") + line;
        out.push_back(cue);
    }
    return out;
}

} // namespace

TEST_CASE("times are written as WebVTT asks, hours with two digits or more") {
    // W3C WebVTT, section Syntax: hours take more than two digits when they must.
    CHECK(timestamp(Seconds(3600)) == "01:00:00.000");
    CHECK(timestamp(Seconds(359999.999)) == "99:59:59.999");
    CHECK(timestamp(Seconds(360000)) == "100:00:00.000");
}

TEST_CASE("FFmpeg reads the same captions back: count, times and text") {
    const auto sheet = script::lay_out(cue_source());
    const auto written = captions(sheet);
    const auto read = read_back(webvtt(sheet));
    REQUIRE(read.size() == written.size());
    for (std::size_t i = 0; i < read.size(); ++i) {
        CHECK(read[i].start == Approx(written[i].start.as_double()).margin(0.00051));
        CHECK(read[i].end == Approx(written[i].end.as_double()).margin(0.00051));
        std::string text = written[i].lines[0];
        if (written[i].lines.size() > 1) text += "\n" + written[i].lines[1];
        CHECK(read[i].text == text);
    }
}

TEST_CASE("no text can end a caption or begin another") {
    const std::string vtt = webvtt(script::lay_out(cue_source()));
    std::istringstream in(vtt);
    std::string line;
    std::getline(in, line);
    CHECK(line == "WEBVTT");
    int arrows = 0;
    for (std::string before; std::getline(in, line); before = line) {
        CHECK(line.find('<') == std::string::npos);
        if (line.find("-->") == std::string::npos) continue;
        ++arrows;
        CHECK(before == std::to_string(arrows)); // the cue's number stands above its times
    }
    CHECK(arrows == static_cast<int>(captions(script::lay_out(cue_source())).size()));
    CHECK(vtt.find("--&gt;") != std::string::npos);
    CHECK(vtt.find("שלום") != std::string::npos);
}

TEST_CASE("a programme without words gives an empty caption file") {
    script::Source source = cue_source();
    source.items.clear();
    CHECK(webvtt(script::lay_out(source)) == "WEBVTT\n");
}
