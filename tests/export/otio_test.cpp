// The OpenTimelineIO timeline, walked through as its documented schemas say. No reader of it is in Debian, so
// the structure is checked field by field against the names that the OpenTimelineIO project documents.
#include "export/edit_material.h"
#include "export/otio.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <set>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;
using nlohmann::json;

namespace {

json timeline_of(const script::Source& source) {
    return json::parse(otio(source, script::lay_out(source)));
}

/// A RationalTime.1 at this rate as its number of frames.
std::int64_t frames(const json& time, double rate) {
    REQUIRE(time.size() == 3);
    CHECK(time["OTIO_SCHEMA"] == "RationalTime.1");
    REQUIRE(time["rate"].is_number_float());
    REQUIRE(time["value"].is_number_float());
    CHECK(time["rate"].get<double>() == rate);
    const double value = time["value"].get<double>();
    const auto whole = static_cast<std::int64_t>(value);
    CHECK(static_cast<double>(whole) == value);
    return whole;
}

struct Range {
    std::int64_t start = 0, length = 0;
};

Range range(const json& r, double rate) {
    REQUIRE(r.size() == 3);
    CHECK(r["OTIO_SCHEMA"] == "TimeRange.1");
    return {frames(r["start_time"], rate), frames(r["duration"], rate)};
}

/// The fields that all of a schema's kind have, and no other.
void check_fields(const json& object, std::set<std::string> wanted) {
    std::set<std::string> there;
    for (const auto& [key, value] : object.items())
        there.insert(key);
    wanted.insert({"OTIO_SCHEMA", "metadata", "name"});
    CHECK(there == wanted);
    CHECK(object["metadata"].is_object());
    CHECK(object["name"].is_string());
}

const std::set<std::string> kItem = {"source_range", "effects", "markers", "enabled"};

std::set<std::string> item_and(const std::set<std::string>& more) {
    auto all = kItem;
    all.insert(more.begin(), more.end());
    return all;
}

void check_media(const json& media, double rate) {
    std::set<std::string> fields = {"available_range", "available_image_bounds"};
    if (media["OTIO_SCHEMA"] == "ExternalReference.1")
        fields.insert("target_url");
    else
        CHECK(media["OTIO_SCHEMA"] == "MissingReference.1");
    check_fields(media, fields);
    CHECK(range(media["available_range"], rate).start == 0);
}

/// Walks a track; its length in frames.
std::int64_t walk(const json& track, const char* kind, double rate) {
    CHECK(track["OTIO_SCHEMA"] == "Track.1");
    CHECK(track["kind"] == kind);
    CHECK(track["source_range"].is_null());
    check_fields(track, item_and({"kind", "children"}));
    std::int64_t length = 0;
    for (const json& child : track["children"]) {
        const Range r = range(child["source_range"], rate);
        CHECK(r.length > 0);
        length += r.length;
        if (child["OTIO_SCHEMA"] == "Gap.1") {
            check_fields(child, kItem);
            continue;
        }
        CHECK(child["OTIO_SCHEMA"] == "Clip.1");
        check_fields(child, item_and({"media_reference"}));
        check_media(child["media_reference"], rate);
        const auto available = range(child["media_reference"]["available_range"], rate);
        double speed = 1;
        for (const json& effect : child["effects"]) {
            check_fields(effect, {"effect_name", "time_scalar"});
            speed = effect["time_scalar"].get<double>();
            CHECK(effect["OTIO_SCHEMA"] == (speed == 0 ? "FreezeFrame.1" : "LinearTimeWarp.1"));
        }
        // What it shows lies inside the recording.
        CHECK(r.start >= 0);
        CHECK(static_cast<double>(r.start) + speed * static_cast<double>(r.length - 1) <=
              static_cast<double>(available.length - 1));
    }
    return length;
}

} // namespace

TEST_CASE("the timeline has the documented structure, and both tracks last as long as the programme") {
    for (const auto& [num, den] : kRates) {
        const auto source = edit_source(num, den);
        const auto sheet = script::lay_out(source);
        const double rate = static_cast<double>(num) / static_cast<double>(den);
        const json timeline = timeline_of(source);
        CHECK(timeline["OTIO_SCHEMA"] == "Timeline.1");
        check_fields(timeline, {"global_start_time", "tracks"});
        CHECK(frames(timeline["global_start_time"], rate) == 0);
        const json& stack = timeline["tracks"];
        CHECK(stack["OTIO_SCHEMA"] == "Stack.1");
        check_fields(stack, item_and({"children"}));
        REQUIRE(stack["children"].size() == 2);
        const Rational length = sheet.running_time * sheet.frame_rate;
        CHECK(Rational(walk(stack["children"][0], "Video", rate)) == length);
        CHECK(Rational(walk(stack["children"][1], "Audio", rate)) == length);
    }
}

TEST_CASE("halts freeze the picture over a gap in the sound, and replays run at their speed") {
    const auto source = edit_source(30000, 1001);
    const auto sheet = script::lay_out(source);
    const json timeline = timeline_of(source);
    const json& video = timeline["tracks"]["children"][0]["children"];
    const json& audio = timeline["tracks"]["children"][1]["children"];
    REQUIRE(video.size() == sheet.segments.size());
    REQUIRE(audio.size() == sheet.segments.size());
    int halts = 0, replays = 0;
    for (std::size_t i = 0; i < sheet.segments.size(); ++i) {
        const auto& s = sheet.segments[i];
        if (s.kind == script::SegmentKind::talk) {
            ++halts;
            CHECK(audio[i]["OTIO_SCHEMA"] == "Gap.1");
            REQUIRE(video[i]["effects"].size() == 1);
            CHECK(video[i]["effects"][0]["OTIO_SCHEMA"] == "FreezeFrame.1");
            CHECK(video[i]["effects"][0]["time_scalar"] == 0.0);
        } else {
            CHECK(audio[i] == video[i]);
            CHECK(video[i]["source_range"]["start_time"]["value"] ==
                  (s.media_start * sheet.frame_rate).as_double());
            CHECK(video[i]["effects"].size() == (s.kind == script::SegmentKind::replay ? 1 : 0));
        }
        if (s.kind == script::SegmentKind::replay) {
            ++replays;
            CHECK(video[i]["effects"][0]["time_scalar"] == 0.5);
        }
    }
    CHECK(halts == 4);
    CHECK(replays == 1);
}

TEST_CASE("stops and asides are markers with all their words") {
    const auto source = edit_source(25, 1);
    const auto sheet = script::lay_out(source);
    const json timeline = timeline_of(source);
    const json& markers = timeline["tracks"]["markers"];
    REQUIRE(markers.size() == 3);
    for (const json& m : markers) {
        CHECK(m["OTIO_SCHEMA"] == "Marker.2");
        check_fields(m, {"color", "comment", "marked_range"});
    }
    CHECK(markers[0]["comment"] == kNasty);
    CHECK(markers[0]["color"] == "RED");
    CHECK(markers[1]["color"] == "YELLOW");
    const Range aside = range(markers[1]["marked_range"], 25);
    CHECK(Rational(aside.start, 25) == sheet.asides[0].programme_start);
    CHECK(Rational(aside.start + aside.length, 25) == sheet.asides[0].programme_end);
}

TEST_CASE("the recording is named by a relative URL, or as missing when it is carried in the project") {
    auto source = edit_source(25, 1);
    const json media = timeline_of(source)["tracks"]["children"][0]["children"][0]["media_reference"];
    // RFC 3986: UTF-8 percent-encoded.
    CHECK(media["target_url"] == "my%20takes/H%C3%A4user%20%26%20%22Co%22.mp4");
    CHECK(media["name"] == "Häuser & \"Co\".mp4");
    source.performance.media.carried = true;
    CHECK(timeline_of(source)["tracks"]["children"][0]["children"][0]["media_reference"]["OTIO_SCHEMA"] ==
          "MissingReference.1");
}

TEST_CASE("a recording without a picture has an audio track only, malformed text is mended") {
    auto source = edit_source(25, 1);
    source.performance.facts.has_video = false;
    source.piece.title = "a\xFF\"b";
    const json timeline = timeline_of(source);
    CHECK(timeline["tracks"]["children"].size() == 1);
    CHECK(timeline["tracks"]["children"][0]["kind"] == "Audio");
    CHECK(timeline["name"] == "a\xEF\xBF\xBD\"b");
    CHECK(timeline_of(script::Source{})["tracks"]["children"][0]["children"].empty());
}
