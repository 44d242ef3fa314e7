// Captions as a browser's own text-track engine reads them: times and words of every cue.
#include "export/browser.h"
#include "export/captions.h"
#include "export/cue_json.h"
#include "export/cue_material.h"
#include "export/webvtt.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cmath>
#include <sstream>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;
using namespace luft::script::testing;
using nlohmann::json;
using project::ScriptItemKind;

namespace {

/// Each cue as the browser has it; its words as they are shown. Percent-encoded, since the page's text is
/// printed as markup.
const char* const kPage = R"(<!DOCTYPE html><meta charset="utf-8"><title>captions</title>
<video><track default src="captions.vtt"></video><pre id="said">not loaded</pre><script>
const track = document.querySelector("track"), said = document.getElementById("said");
track.addEventListener("error", () => { said.textContent = "error"; });
track.addEventListener("load", () => {
  said.textContent = encodeURIComponent(JSON.stringify([...track.track.cues].map(
    cue => ({start: cue.startTime, end: cue.endTime, text: cue.getCueAsHTML().textContent}))));
});
track.track.mode = "hidden";
</script>)";

std::string decoded(const std::string& text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i)
        if (text[i] == '%') {
            out += static_cast<char>(std::stoi(text.substr(i + 1, 2), nullptr, 16));
            i += 2;
        } else {
            out += text[i];
        }
    return out;
}

json cues_in_browser(const std::string& vtt) {
    const test::Folder folder;
    test::write_all(folder / "captions.vtt", vtt);
    const std::string said = said_by(folder, kPage);
    INFO(said);
    REQUIRE(said.starts_with("%5B"));
    return json::parse(decoded(said));
}

std::string folded(const std::string& text) {
    std::istringstream in(text);
    std::string out;
    for (std::string word; in >> word;)
        out += (out.empty() ? "" : " ") + word;
    return out;
}

/// Talks with everything that a caption file could misunderstand.
script::Source hard_source() {
    script::Source source = cue_source();
    source.items[1].text = kNasty;
    source.items[3].text =
        "&amp; &lt;b&gt; <b>bold</b> <00:00:01.000> {\\an8} NOTE not a note. STYLE ::cue{} WEBVTT & more; "
        "<v Mara>voice</v> <lang en>x</lang> &nbsp;&lrm; a<b and c>d; A&B;C";
    source.items[4].text =
        "e\xCC\x81\xCC\xA3 o\xCC\x88 \xE2\x80\x8F\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D, "
        "\xD9\x85\xD8\xB1\xD8\xAD\xD8\xA8\xD8\xA7 "
        "\xE6\xAD\x8C \xF0\x9F\x8E\xB5 \xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x8E\xA4 --> fin";
    return source;
}

} // namespace

TEST_CASE("a browser shows every caption from and to its millisecond, with every character of its words") {
    const auto source = hard_source();
    const auto sheet = script::lay_out(source);
    const auto written = whole_captions(sheet);
    const json cues = cues_in_browser(webvtt(sheet));
    REQUIRE(cues.size() == written.size());
    for (std::size_t i = 0; i < written.size(); ++i) {
        std::string text;
        for (const auto& line : written[i].lines)
            text += (text.empty() ? "" : "\n") + line;
        CHECK(cues[i]["text"] == text);
        CHECK(std::llround(cues[i]["start"].get<double>() * 1e6) == written[i].start_ms * 1000);
        CHECK(std::llround(cues[i]["end"].get<double>() * 1e6) == written[i].end_ms * 1000);
    }
}

TEST_CASE("in a browser the captions of each talk and aside begin where the cue sheet's JSON says, and hold "
          "all its words") {
    for (const auto& source : {hard_source(), cue_source()}) {
        const auto sheet = script::lay_out(source);
        const json cues = cues_in_browser(webvtt(sheet));
        const json in_json = json::parse(cue_json(source, sheet));
        std::vector<json> spoken;
        for (const auto& s : in_json["segments"])
            if (s["kind"] == "talk") spoken.push_back(s);
        for (const auto& a : in_json["asides"])
            spoken.push_back(a);
        const auto start_ms = [](const json& s) {
            return std::llround(s["programme"]["in"]["seconds"].get<double>() * 1000);
        };
        std::ranges::stable_sort(spoken, {}, start_ms);
        std::size_t cue = 0;
        for (std::size_t i = 0; i < spoken.size(); ++i) {
            REQUIRE(cue < cues.size());
            CHECK(std::llround(cues[cue]["start"].get<double>() * 1000) == start_ms(spoken[i]));
            std::string words;
            for (; cue < cues.size() &&
                   (i + 1 == spoken.size() ||
                    std::llround(cues[cue]["start"].get<double>() * 1000) < start_ms(spoken[i + 1]));
                 ++cue)
                words += cues[cue]["text"].get<std::string>() + " ";
            CHECK(folded(words) == folded(spoken[i]["text"]));
        }
        CHECK(cue == cues.size());
    }
}

TEST_CASE("a browser reads captions behind the hundredth hour") {
    script::Source source = material();
    source.performance.facts.duration = Seconds(400'000);
    source.items = {item(1, ScriptItemKind::stop, 399'000, "Late.")};
    const json cues = cues_in_browser(webvtt(script::lay_out(source)));
    REQUIRE(cues.size() == 1);
    CHECK(cues[0]["start"] == 399'000);
    CHECK(cues[0]["text"] == "Late.");
}
