// SubRip, read back by FFmpeg's own demuxer and decoder.
#include "export/captions.h"
#include "export/cue_material.h"
#include "export/read_captions.h"
#include "export/subrip.h"

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;

namespace {

/// Without the unseen joiners that keep signs apart.
std::string as_seen(std::string text) {
    const std::string joiner = "\xE2\x81\xA0";
    for (std::size_t at = 0; (at = text.find(joiner, at)) != std::string::npos;)
        text.erase(at, joiner.size());
    return text;
}

/// Checks that FFmpeg reads a programme's captions back: count, times, words.
void check_read_back(const script::Source& source) {
    const auto sheet = script::lay_out(source);
    const auto written = captions(sheet);
    const auto read = read_back(subrip(sheet), "srt");
    REQUIRE(read.size() == written.size());
    for (std::size_t i = 0; i < read.size(); ++i) {
        CHECK(read[i].start == Approx(written[i].start.as_double()).margin(0.00051));
        CHECK(read[i].end == Approx(written[i].end.as_double()).margin(0.00051));
        std::string text = written[i].lines[0];
        if (written[i].lines.size() > 1) text += "\n" + written[i].lines[1];
        CHECK(as_seen(read[i].text) == text);
    }
}

} // namespace

TEST_CASE("FFmpeg reads the same SubRip captions back: count, times and text") {
    check_read_back(cue_source());
}

TEST_CASE("no text is taken for SubRip's markup, number or times") {
    auto source = cue_source();
    source.items[4].text = "<i>Not slanted</i> {\\an8}nor moved.\n\n17\n\n00:00:01,000 --> 00:00:02,000\n\n"
                           "<font color=\"red\">nor red</font> \\h \\N a < b > c -->";
    check_read_back(source);
    source.items[4].text = "1984";
    check_read_back(source);
}

TEST_CASE("SubRip captions are numbered from 1, their lines end with CR LF, and no text ends one") {
    const std::string srt = subrip(script::lay_out(cue_source()));
    std::size_t arrows = 0, number = 0;
    std::istringstream in(srt);
    std::string before;
    for (std::string line; std::getline(in, line); before = line) {
        REQUIRE(line.ends_with('\r'));
        if (line.find("-->") == std::string::npos) continue;
        ++arrows;
        CHECK(line.size() == 30);
        CHECK(before == std::to_string(++number) + "\r");
    }
    CHECK(arrows == captions(script::lay_out(cue_source())).size());
    CHECK(srt.starts_with("1\r\n00:00:00,000 --> "));
}

TEST_CASE("a programme without words gives an empty SubRip file") {
    auto source = cue_source();
    source.items.clear();
    CHECK(subrip(script::lay_out(source)).empty());
}
