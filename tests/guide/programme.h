// A programme on that recording: an opening, three stops (one replayed, one going on elsewhere), an aside.
#pragma once

#include "guide/guide.h"
#include "guide/recording.h"
#include "script/script_material.h"

#include <filesystem>

namespace luft::guide::testing {

using project::ScriptItemKind;

struct Programme {
    script::Source source;
    script::CueSheet sheet;
    profile::Source song;
    std::filesystem::path recording;

    /// What a guide is made from; the programme must outlive it.
    [[nodiscard]] Material material(const std::filesystem::path& voices = {}) const {
        return {source, sheet, song, [this] { return open_file(recording); }, voices};
    }
};

inline project::ScriptItem spoken(std::int64_t id, ScriptItemKind kind, double at, double length) {
    auto item = script::testing::item(id, kind, at, "words to speak");
    item.rehearsed = Seconds(length);
    return item;
}

/// Times on no frame, so that rounding shows. Item 3's resume leaves out what lies between.
inline std::vector<project::ScriptItem> items() {
    std::vector<project::ScriptItem> all{
        spoken(1, ScriptItemKind::opening, 0, 0.61), spoken(2, ScriptItemKind::stop, 2.013, 0.83),
        spoken(3, ScriptItemKind::stop, 4.487, 0.7), spoken(4, ScriptItemKind::stop, 7.111, 1.2),
        spoken(5, ScriptItemKind::aside, 6.2, 0.5),  spoken(6, ScriptItemKind::closing, 0, 0.5)};
    all[1].resume = Seconds(1.5);
    all[2].replay = Span{Seconds(3.05), Seconds(3.95)};
    all[2].replay_speed = 0.5;
    all[3].resume = Seconds(8.52);
    return all;
}

inline Programme programme(const std::filesystem::path& recording, std::vector<project::ScriptItem> script,
                           Rational frame_rate) {
    Programme p;
    p.recording = recording;
    p.source.piece.title = "Harbour Lamps";
    p.source.performance.id = {1};
    p.source.performance.label = "A";
    p.source.performance.performer = "Mara Lindqvist";
    const media::Facts facts = media::probe(open_file(recording));
    p.source.performance.facts.duration = facts.duration;
    p.source.performance.facts.has_video = facts.video.has_value();
    p.source.items = std::move(script);
    p.source.settings.frame_rate_num = frame_rate.num();
    p.source.settings.frame_rate_den = frame_rate.den();
    p.sheet = script::lay_out(p.source);
    p.song.piece = p.source.piece;
    p.song.performance = p.source.performance;
    return p;
}

/// Programme time of the n-th segment of a kind.
inline const script::Segment& segment(const Programme& p, script::SegmentKind kind, int n) {
    for (const script::Segment& s : p.sheet.segments)
        if (s.kind == kind && n-- == 0) return s;
    throw Error(Fault::not_found, "The programme has no such segment.");
}

} // namespace luft::guide::testing
