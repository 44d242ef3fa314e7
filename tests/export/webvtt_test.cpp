// WebVTT by the W3C's draft, read back by FFmpeg's own demuxer.
#include "base/text.h"
#include "export/captions.h"
#include "export/cue_material.h"
#include "export/read_captions.h"
#include "export/webvtt.h"

#include <catch2/catch.hpp>

#include <sstream>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;

TEST_CASE("times are written as WebVTT asks, hours with two digits or more") {
    // W3C WebVTT, section Syntax: hours take more than two digits when they must.
    CHECK(timestamp(Seconds(3600)) == "01:00:00.000");
    CHECK(timestamp(Seconds(359999.999)) == "99:59:59.999");
    CHECK(timestamp(Seconds(360000)) == "100:00:00.000");
}

TEST_CASE("FFmpeg reads the same captions back: count, times and text") {
    const auto sheet = script::lay_out(cue_source());
    const auto written = captions(sheet);
    const auto read = read_back(webvtt(sheet), "vtt");
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
