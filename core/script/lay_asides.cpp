#include "script/lay_asides.h"

#include "script/singing.h"
#include "script/warnings.h"

#include <algorithm>

namespace luft::script {
namespace {

const Segment* playing_at(const CueSheet& sheet, Rational media) {
    for (const Segment& s : sheet.segments)
        if (s.kind == SegmentKind::play && s.media_start <= media && media < s.media_end) return &s;
    return nullptr;
}

struct Placed {
    AsideCue cue;
    Rational room_end; ///< end of its play segment
    const project::ScriptItem* item = nullptr;
};

} // namespace

Rational aside_length(const Source& source, const Grid& grid, const project::ScriptItem& item) {
    const Rational length =
        item.rehearsed ? exact(*item.rehearsed) : time_to_say(item.text, source.settings.words_per_minute);
    return grid.time(std::max<std::int64_t>(grid.frames_for(length), 0));
}

void lay_asides(const Source& source, const Grid& grid, const std::vector<const project::ScriptItem*>& items,
                CueSheet& sheet) {
    std::vector<Placed> placed;
    for (const auto* item : items) {
        const Rational length = aside_length(source, grid, *item);
        if (length == Rational(0)) continue; // nothing to say yet
        const Rational media = grid.time(grid.nearest(item->at));
        const Segment* segment = playing_at(sheet, media);
        if (!segment) {
            sheet.warnings.push_back(aside_not_played_warning(*item));
            continue;
        }
        Placed p;
        p.item = item;
        p.room_end = segment->programme_end;
        p.cue.item = item->id;
        p.cue.programme_start = segment->programme_start + (media - segment->media_start);
        p.cue.programme_end = p.cue.programme_start + length;
        p.cue.media_start = seconds(media);
        p.cue.text = item->text;
        placed.push_back(std::move(p));
    }
    std::ranges::stable_sort(placed, {}, [](const Placed& p) { return p.cue.programme_start; });
    for (std::size_t i = 0; i < placed.size(); ++i) {
        AsideCue& cue = placed[i].cue;
        Rational room = placed[i].room_end;
        const bool another = i + 1 < placed.size() && placed[i + 1].cue.programme_start < room;
        if (another) room = placed[i + 1].cue.programme_start;
        if (cue.programme_end > room) {
            sheet.warnings.push_back(cut_off_warning(*placed[i].item, cue.programme_end - room, another));
            cue.programme_end = room;
        }
        if (cue.programme_end > cue.programme_start) sheet.asides.push_back(std::move(cue));
    }
}

std::vector<Span> free_for_aside(const Source& source, const CueSheet& sheet, project::ScriptItemId aside) {
    std::vector<Span> played;
    for (const Segment& s : sheet.segments)
        if (s.kind == SegmentKind::play) played.push_back({seconds(s.media_start), seconds(s.media_end)});
    std::vector<Span> taken = singing(source.marks);
    for (const AsideCue& a : sheet.asides)
        if (a.item != aside)
            taken.push_back({a.media_start, a.media_start + seconds(a.programme_end - a.programme_start)});
    return without(played, std::move(taken));
}

} // namespace luft::script
