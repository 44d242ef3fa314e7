// One programme of more than an hour at every rate: all files that carry its times agree on each boundary, to
// the frame. Timecode is read by a counter that goes label by label.
#include "export/captions.h"
#include "export/chapters.h"
#include "export/cue_csv.h"
#include "export/cue_json.h"
#include "export/edit_material.h"
#include "export/edl.h"
#include "export/otio.h"
#include "export/webvtt.h"
#include "reference/timecode.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <sstream>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;
using namespace luft::script::testing;
using nlohmann::json;
using project::ScriptItemKind;

namespace {

struct RateRow {
    std::int64_t num, den;
    bool drop;
    int base; ///< labels a second
};

const RateRow kRows[] = {
    {24000, 1001, false, 24}, {24, 1, false, 24}, {25, 1, false, 25}, {30000, 1001, true, 30},
    {30000, 1001, false, 30}, {30, 1, false, 30}, {50, 1, false, 50}, {60000, 1001, true, 60},
    {60000, 1001, false, 60}, {60, 1, false, 60},
};

/// An hour of recording with 60 stops at uneven places, some with a replay, some with a quote of another
/// performance of another rate, slowed or not, some going on from another place; asides, opening, closing.
script::Source hour(const RateRow& row) {
    script::Source source = quoting_source(row.num, row.den);
    source.others[0].performance.facts.duration = Seconds(1800);
    source.settings.drop_frame = row.drop;
    source.performance.facts.duration = Seconds(3600);
    source.items = {item(1, ScriptItemKind::opening, 0, words(31))};
    for (int i = 0; i < 60; ++i) {
        auto stop = item(2 + i, ScriptItemKind::stop, 13.37 + 59.11 * i, words(5 + (7 * i) % 40));
        if (i % 3 == 0) stop.replay = Span{stop.at - Seconds(7.3), stop.at - Seconds(1.1)};
        if (i % 6 == 0) stop.replay_speed = i % 12 == 0 ? 0.5 : 0.75;
        if (i % 4 == 0)
            stop.quote = project::Quote{{2}, {Seconds(21.77 + 27.3 * i), Seconds(25.01 + 27.3 * i)}};
        if (i % 5 == 0) stop.rehearsed = Seconds(4.4321 + i);
        if (i % 7 == 0) stop.resume = stop.at - Seconds(2.9);
        source.items.push_back(stop);
    }
    for (int i = 0; i < 5; ++i)
        source.items.push_back(
            item(100 + i, ScriptItemKind::aside, 40 + 700.7 * i, "Listen to this one here."));
    source.items.push_back(item(200, ScriptItemKind::closing, 0, words(17)));
    return source;
}

/// Where each segment begins and where the last one ends, in frames, from the cue sheet itself.
std::vector<std::int64_t> boundaries(const script::CueSheet& sheet) {
    std::vector<std::int64_t> frames;
    Rational at;
    for (const auto& s : sheet.segments) {
        CHECK(s.programme_start == at);
        const Rational start = s.programme_start * sheet.frame_rate;
        REQUIRE(start.den() == 1);
        for (const Rational media : {s.media_start, s.media_end})
            CHECK((media * sheet.frame_rate).den() == 1);
        frames.push_back(start.num());
        at = s.programme_end;
    }
    CHECK(at == sheet.running_time);
    REQUIRE((at * sheet.frame_rate).den() == 1);
    frames.push_back((at * sheet.frame_rate).num());
    return frames;
}

std::ptrdiff_t quotes_in(const script::CueSheet& sheet) {
    return std::ranges::count(sheet.segments, script::SegmentKind::quote, &script::Segment::kind);
}

std::set<std::int64_t> of_edl(const std::string& list,
                              const std::unordered_map<std::string, std::int64_t>& frame_of) {
    std::set<std::int64_t> frames;
    std::istringstream in(list);
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line[0] < '0' || line[0] > '9') continue;
        std::istringstream parts(line);
        std::vector<std::string> part;
        for (std::string word; parts >> word;)
            part.push_back(word);
        REQUIRE(part.size() == 8);
        for (std::size_t i = 4; i < 8; ++i)
            CHECK(frame_of.contains(part[i])); // no label that isn't counted
        frames.insert(frame_of.at(part[6]));
        frames.insert(frame_of.at(part[7]));
        CHECK(frame_of.at(part[7]) > frame_of.at(part[6]));
    }
    return frames;
}

std::vector<std::int64_t> of_otio(const std::string& timeline, std::size_t track) {
    std::vector<std::int64_t> frames{0};
    const json read = json::parse(timeline);
    for (const auto& clip : read["tracks"]["children"][track]["children"])
        frames.push_back(frames.back() +
                         static_cast<std::int64_t>(clip["source_range"]["duration"]["value"].get<double>()));
    return frames;
}

} // namespace

TEST_CASE("at every rate edit list, timeline, cue sheets, chapters and captions of an hour have the same "
          "boundaries, to the frame") {
    for (const RateRow& row : kRows) {
        INFO(row.num << "/" << row.den << (row.drop ? " drop-frame" : ""));
        const auto source = hour(row);
        const auto sheet = script::lay_out(source);
        CHECK(sheet.frame_rate == Rational(row.num, row.den));
        CHECK(sheet.drop_frame == row.drop);
        const auto at = boundaries(sheet);
        REQUIRE(at.size() > 155);
        CHECK(sheet.running_time > Rational(3600));
        const int dropped = row.drop ? row.base / 15 : 0; // 2 of 30, 4 of 60
        const auto frame_of = reference::labels(row.base, dropped, at.back() + 1);

        const auto list = of_edl(edl(source, sheet), frame_of);
        CHECK(list == std::set<std::int64_t>(at.begin(), at.end()));
        CHECK(quotes_in(sheet) == 15);

        const std::string timeline = otio(source, sheet);
        CHECK(of_otio(timeline, 0) == at);
        CHECK(of_otio(timeline, 1) == at);

        const json cues = json::parse(cue_json(source, sheet));
        REQUIRE(cues["segments"].size() + 1 == at.size());
        for (std::size_t i = 0; i + 1 < at.size(); ++i)
            for (const auto& [side, frame] : {std::pair{"in", at[i]}, {"out", at[i + 1]}}) {
                const json& time = cues["segments"][i]["programme"][side];
                if (time["frame"] != frame || frame_of.at(time["timecode"]) != frame ||
                    std::llround(time["seconds"].get<double>() * static_cast<double>(row.num) /
                                 static_cast<double>(row.den) * 1000) != frame * 1000)
                    FAIL("segment " << i << " " << side << ": " << time.dump());
            }

        std::istringstream table(cue_csv(source, sheet)); // its words have neither comma nor line end here
        std::string record;
        std::getline(table, record);
        std::size_t segment = 0;
        while (std::getline(table, record)) {
            std::istringstream fields(record);
            std::vector<std::string> field;
            for (std::string f; std::getline(fields, f, ',');)
                field.push_back(f);
            if (field.at(1) == "aside") continue;
            REQUIRE(segment + 1 < at.size());
            CHECK(frame_of.at(field[2]) == at[segment]);
            CHECK(frame_of.at(field[3]) == at[segment + 1]);
            CHECK(std::stod(field[4]) ==
                  Approx(Rational(at[segment] * row.den, row.num).as_double()).margin(5.1e-7));
            ++segment;
        }
        CHECK(segment + 1 == at.size());

        const std::set<std::int64_t> starts(at.begin(), at.end());
        const auto all = chapters(source, sheet);
        CHECK(all.size() > 50);
        for (const Chapter& c : all)
            CHECK(starts.contains((c.start * sheet.frame_rate).num()));

        std::map<std::int64_t, bool> caption_at; // milliseconds
        for (const auto& c : whole_captions(sheet))
            caption_at[c.start_ms] = true;
        for (const auto& s : sheet.segments)
            if (s.kind == script::SegmentKind::talk)
                CHECK(caption_at.contains((s.programme_start * Rational(1000)).round()));
    }
}

TEST_CASE("an hour of recording is as many frames as SMPTE ST 12-1 counts in an hour") {
    // 107892 labels in an hour of drop-frame at 29.97, twice as many at 59.94; 3600 x base at whole rates,
    // and 3600 x rate, the last not whole one left out, at 23.976.
    const std::map<std::pair<int, int>, std::int64_t> frames = {
        {{24000, 1001}, 86313}, {{24, 1}, 86400},  {{25, 1}, 90000},        {{30000, 1001}, 107892},
        {{30, 1}, 108000},      {{50, 1}, 180000}, {{60000, 1001}, 215784}, {{60, 1}, 216000}};
    for (const auto& [rate, count] : frames) {
        auto source = edit_source(rate.first, rate.second);
        source.performance.facts.duration = Seconds(3600);
        source.items.clear();
        const auto sheet = script::lay_out(source);
        CHECK(sheet.running_time * sheet.frame_rate == Rational(count));
    }
}
