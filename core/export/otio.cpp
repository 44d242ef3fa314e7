#include "export/otio.h"

#include "base/shown_text.h"
#include "export/cue_rows.h"
#include "export/cue_time.h"
#include "export/edit.h"
#include "script/grid.h"
#include "script/others.h"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace luft::exports {
namespace {

using Json = nlohmann::ordered_json;

/// A relative path as a URL: all but the unreserved characters of RFC 3986 and '/' as %XX.
std::string url_of(const std::string& path) {
    constexpr std::string_view kPlain = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._~/";
    constexpr std::string_view kHex = "0123456789ABCDEF";
    std::string url;
    for (const char c : path) {
        const auto u = static_cast<unsigned char>(c);
        if (kPlain.find(c) != std::string_view::npos)
            url += c;
        else
            url += {'%', kHex[u >> 4U], kHex[u & 15U]};
    }
    return url;
}

class Timeline {
  public:
    Timeline(const script::Source& source, const script::CueSheet& sheet)
        : source_(source), sheet_(sheet), edit_(source, sheet) {}

    Json run() {
        Json tracks = Json::array();
        if (edit_.has_picture()) tracks.push_back(track("Video"));
        tracks.push_back(track("Audio"));
        Json stack = item("Stack.1", "tracks", nullptr);
        for (const Place& place : edit_.places())
            stack["markers"].push_back(marker(place));
        stack["children"] = std::move(tracks);
        return {{"OTIO_SCHEMA", "Timeline.1"},
                {"metadata", ours(with_credits({{"frame_rate", fraction(sheet_.frame_rate)},
                                                {"drop_frame", sheet_.drop_frame}},
                                               source_.performance))},
                {"name", source_.piece.title},
                {"global_start_time", time(0, sheet_.frame_rate)},
                {"tracks", std::move(stack)}};
    }

  private:
    static Json time(std::int64_t frames, Rational rate) {
        return {{"OTIO_SCHEMA", "RationalTime.1"},
                {"rate", rate.as_double()},
                {"value", static_cast<double>(frames)}};
    }

    static Json range(std::int64_t start, std::int64_t frames, Rational rate) {
        return {{"OTIO_SCHEMA", "TimeRange.1"},
                {"start_time", time(start, rate)},
                {"duration", time(frames, rate)}};
    }
    [[nodiscard]] Json range(std::int64_t start, std::int64_t frames) const {
        return range(start, frames, sheet_.frame_rate);
    }

    static Json with_credits(Json fields, const project::Performance& performance) {
        fields["performer"] = performance.performer;
        fields["source"] = performance.source;
        fields["permission"] = performance.permission;
        return fields;
    }

    static Json ours(Json fields) { return {{"luftpause", std::move(fields)}}; }

    /// What stacks, tracks, clips and gaps have in common.
    static Json item(const char* schema, const std::string& name, Json source_range) {
        return {{"OTIO_SCHEMA", schema},
                {"metadata", Json::object()},
                {"name", name},
                {"source_range", std::move(source_range)},
                {"effects", Json::array()},
                {"markers", Json::array()},
                {"enabled", true}};
    }

    [[nodiscard]] Json marker(const Place& place) const {
        return {{"OTIO_SCHEMA", "Marker.2"}, {"metadata", ours({{"kind", place.aside ? "aside" : "stop"}})},
                {"name", place.title},       {"color", place.aside ? "YELLOW" : "RED"},
                {"comment", place.text},     {"marked_range", range(place.from, place.to - place.from)}};
    }

    /// All of a recording: another one's counts at its own rate.
    [[nodiscard]] Json available(const script::Segment& s) const {
        const auto& facts = script::performance_of(source_, s).facts;
        if (!s.other) return range(0, edit_.media_frames());
        const script::Grid grid(facts.has_video ? script::programme_rate({}, facts) : sheet_.frame_rate);
        return range(0, std::max<std::int64_t>(grid.frames_in(facts.duration), 1), grid.rate());
    }

    [[nodiscard]] Json media(const script::Segment& s) const {
        const auto& performance = script::performance_of(source_, s);
        const auto& link = performance.media;
        const bool missing = link.carried || link.path.empty();
        Json out = {{"OTIO_SCHEMA", missing ? "MissingReference.1" : "ExternalReference.1"},
                    {"metadata", Json::object()},
                    {"name", clip_name(performance)},
                    {"available_range", available(s)},
                    {"available_image_bounds", nullptr}};
        if (!missing) out["target_url"] = url_of(link.path);
        return out;
    }

    static Json warp(const char* schema, const char* name, double speed) {
        return {{"OTIO_SCHEMA", schema},
                {"metadata", Json::object()},
                {"name", ""},
                {"effect_name", name},
                {"time_scalar", speed}};
    }

    [[nodiscard]] Json child(const script::Segment& s, bool picture) const {
        const Cut cut = edit_.cut(s);
        const bool stands = s.kind == script::SegmentKind::talk;
        const bool gap = picture ? !edit_.has_picture(s) : stands;
        const std::string name =
            s.kind == script::SegmentKind::play ? clip_name(source_.performance) : s.title;
        Json out = item(gap ? "Gap.1" : "Clip.1", name, range(gap ? 0 : cut.source_in, cut.length()));
        Json fields = {{"kind", kind_word({&s, nullptr})}, {"stop", s.stop_number}};
        if (s.other) {
            const auto& other = script::performance_of(source_, s);
            fields["performance"] = other.label;
            fields = with_credits(std::move(fields), other);
        }
        out["metadata"] = ours(std::move(fields));
        if (gap) return out;
        if (stands) out["effects"].push_back(warp("FreezeFrame.1", "FreezeFrame", 0));
        if (!stands && s.speed != Rational(1))
            out["effects"].push_back(warp("LinearTimeWarp.1", "LinearTimeWarp", s.speed.as_double()));
        out["media_reference"] = media(s);
        return out;
    }

    [[nodiscard]] Json track(const char* kind) const {
        Json out = item("Track.1", kind, nullptr);
        out["kind"] = kind;
        out["children"] = Json::array();
        for (const auto& s : sheet_.segments)
            out["children"].push_back(child(s, kind == std::string_view("Video")));
        return out;
    }

    const script::Source& source_;
    const script::CueSheet& sheet_;
    Edit edit_;
};

} // namespace

std::string otio(const script::Source& source, const script::CueSheet& sheet) {
    return shown_json(Timeline(source, sheet).run().dump(2, ' ', false, Json::error_handler_t::replace)) +
           "\n";
}

} // namespace luft::exports
