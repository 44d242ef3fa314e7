// The edit decision list, read by white space as its readers do.
#include "export/edit_material.h"
#include "export/edl.h"
#include "script/timecode.h"

#include <catch2/catch.hpp>

#include <map>
#include <sstream>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;

namespace {

struct Event {
    std::string number, reel, track, source_in, source_out, record_in, record_out;
    std::vector<std::string> notes; ///< the lines after it
};

struct List {
    std::string title, mode;
    std::vector<Event> events;
};

List read(const std::string& text) {
    List list;
    std::istringstream in(text);
    std::string line;
    REQUIRE(std::getline(in, list.title));
    REQUIRE(std::getline(in, list.mode));
    REQUIRE((std::getline(in, line) && line.empty()));
    while (std::getline(in, line)) {
        REQUIRE(!line.empty());
        if (line[0] < '0' || line[0] > '9') {
            REQUIRE(!list.events.empty());
            list.events.back().notes.push_back(line);
            continue;
        }
        std::istringstream words(line);
        Event e;
        std::string cut, more;
        words >> e.number >> e.reel >> e.track >> cut >> e.source_in >> e.source_out >> e.record_in >>
            e.record_out;
        INFO(line);
        CHECK(cut == "C");
        CHECK_FALSE(words >> more);
        CHECK(line.size() == 76); // the layout's columns: number 1, reel 6, track 15, cut 21, times from 30
        CHECK(line.find(e.track, 13) == 14);
        list.events.push_back(e);
    }
    return list;
}

List list_of(const script::Source& source) {
    return read(edl(source, script::lay_out(source)));
}

/// An event's line that starts so; empty when there is none.
std::string noted(const Event& e, const std::string& start) {
    for (const auto& note : e.notes)
        if (note.starts_with(start)) return note;
    return {};
}

} // namespace

TEST_CASE("record times of the edit list are those of SMPTE ST 12-1 at 29.97 drop-frame") {
    // The list of check values: frame 1800 = 00:01:00;02, 3598 = 00:02:00;02, 17982 = 00:10:00;00,
    // 107892 = 01:00:00;00.
    const auto list =
        list_of(halts({{1800, 1798}, {1800 + 17982 - 3598, 18}, {17982 - 1798 + 107892 - 18000, 60}}));
    CHECK(list.mode == "FCM: DROP FRAME");
    std::vector<std::string> halts, lasts, sources;
    for (const auto& e : list.events)
        if (e.track == "V") {
            halts.push_back(e.record_in);
            lasts.push_back(e.record_out);
            sources.push_back(e.source_in);
        }
    CHECK(halts == std::vector<std::string>{"00:01:00;02", "00:10:00;00", "01:00:00;00"});
    CHECK(lasts == std::vector<std::string>{"00:02:00;02", "00:10:00;18", "01:00:02;00"});
    CHECK(sources[0] == "00:01:00;02");
    CHECK(list.events[0].source_out == "00:01:00;02"); // out points are exclusive
}

TEST_CASE("the same programme counts without drop-frame where it isn't asked for") {
    auto source = halts({{1800, 30}, {107892 - 30, 30}});
    source.settings.drop_frame = false;
    const auto list = list_of(source);
    CHECK(list.mode == "FCM: NON-DROP FRAME");
    std::vector<std::string> halts;
    for (const auto& e : list.events)
        if (e.track == "V") halts.push_back(e.record_in);
    CHECK(halts == std::vector<std::string>{"00:01:00:00", "00:59:56:12"}); // frame 107892
}

TEST_CASE("on every track the events of the list run from 0 to the running time without a gap") {
    for (const auto& [num, den] : kRates)
        for (const bool video : {true, false}) {
            auto source = edit_source(num, den);
            source.performance.facts.has_video = video;
            const auto sheet = script::lay_out(source);
            const Rational rate(num, den);
            std::map<std::string, std::int64_t> at, sum;
            for (const auto& e : list_of(source).events) {
                const auto in = script::frame_of_timecode(e.record_in, rate);
                const auto out = script::frame_of_timecode(e.record_out, rate);
                CHECK(out > in);
                for (const std::string track : {"V", "AA"}) {
                    if (e.track != track && e.track != "AA/V") continue;
                    CHECK(at[track] == in);
                    at[track] = out;
                    sum[track] += out - in;
                }
            }
            CHECK(Rational(sum["AA"]) == sheet.running_time * rate);
            CHECK(sum["V"] == (video ? sum["AA"] : 0));
        }
}

TEST_CASE("music has its own length on both sides, halts stand, replays say how slow they are") {
    const auto list = list_of(edit_source(25, 1));
    int frozen = 0, slowed = 0;
    for (const auto& e : list.events) {
        const auto frame = [](const std::string& t) { return script::frame_of_timecode(t, 25); };
        const auto source = frame(e.source_out) - frame(e.source_in);
        const auto record = frame(e.record_out) - frame(e.record_in);
        const std::string motion = noted(e, "M2 ");
        if (motion.empty()) {
            CHECK(source == record);
        } else {
            std::istringstream words(motion);
            std::string m2, reel, speed, at;
            words >> m2 >> reel >> speed >> at;
            CHECK(reel == e.reel);
            CHECK(at == e.source_in);
            if (speed == "000.0") {
                CHECK(source == 1);
                ++frozen;
            } else {
                CHECK(speed == "012.5"); // half of 25
                CHECK(record == 2 * source);
                ++slowed;
            }
        }
        CHECK((e.reel == "BL" || noted(e, "* FROM CLIP NAME: ") == "* FROM CLIP NAME: Häuser & \"Co\".mp4"));
    }
    CHECK(frozen == 4); // opening, two stops, closing
    CHECK(slowed == 1);
}

TEST_CASE("stops and asides are found again by their places") {
    const auto sheet = script::lay_out(edit_source(25, 1));
    std::vector<std::string> places;
    for (const auto& e : list_of(edit_source(25, 1)).events)
        for (const auto& note : e.notes)
            if (note.starts_with("* LOC: ")) places.push_back(note.substr(7));
    REQUIRE(places.size() == 3);
    CHECK(places[0].find("RED     Stop 1: ") == 12);
    CHECK(places[1] == script::timecode((sheet.asides[0].programme_start * Rational(25)).round(), 25, false) +
                           " YELLOW  Aside: Listen to the harbour bell.");
    CHECK(places[2].find("RED     Stop 2: =1+1 is no formula here") == 12);
}

TEST_CASE("no text adds a line to the list, nor a reel that means something else") {
    auto source = edit_source(25, 1);
    const auto lines = [](const std::string& text) { return std::ranges::count(text, '\n'); };
    const auto before = lines(edl(source, script::lay_out(source)));
    source.piece.title = "a\n001  BL V C\xE2\x80\xA8 002 \xC2\x85 003 \x1E 004 \xFF";
    source.performance.media.path = "x/\r\nTITLE: no";
    source.performance.label = "bl";
    const std::string text = edl(source, script::lay_out(source));
    CHECK(lines(text) == before);
    for (const char* end : {"\xE2\x80\xA8", "\xC2\x85", "\x1E", "\r", "\xFF"})
        CHECK(text.find(end) == std::string::npos);
    CHECK(list_of(source).events[0].reel == "BL1");
    source.performance.label = "../Mara, live in Köln!";
    CHECK(list_of(source).events[0].reel == "MARALIVE");
    source.performance.label = "声";
    CHECK(list_of(source).events[0].reel == "REEL");
}

TEST_CASE("an empty programme gives a list without events") {
    script::Source source;
    CHECK(list_of(source).events.empty());
}
