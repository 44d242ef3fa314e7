#include "script/order.h"

#include "script/lay_asides.h"
#include "script/singing.h"

#include <algorithm>
#include <cmath>

namespace luft::script {
namespace {

using project::ScriptItem;
using project::ScriptItemKind;

bool is_frame(const ScriptItem& item) {
    return item.kind == ScriptItemKind::opening || item.kind == ScriptItemKind::closing;
}

ScriptItem at(ScriptItem item, Seconds t) {
    item.at = t;
    item.position = 0;
    return item;
}

/// How many warnings the script has with the item so.
std::size_t warnings_with(Source source, const ScriptItem& item) {
    const auto old = std::ranges::find(source.items, item.id, &ScriptItem::id);
    if (old != source.items.end()) *old = item;
    return lay_out(source).warnings.size();
}

std::optional<ScriptItem> among_its_kind(const ScriptItem& item, const ScriptItem* before,
                                         const ScriptItem* after) {
    ScriptItem out = item;
    if (before && before->kind == item.kind)
        out.position = before->position + (before->position < item.position ? 1 : 0);
    else if (after && after->kind == item.kind)
        out.position = after->position - (after->position > item.position ? 1 : 0);
    else
        return std::nullopt;
    return out;
}

/// What the neighbours leave: stops and asides by their places, openings and closings by the recording's
/// ends.
Span room(const Source& source, const ScriptItem* before, const ScriptItem* after) {
    return {before && !is_frame(*before) ? before->at : Seconds(0),
            after && !is_frame(*after) ? after->at : source.performance.facts.duration + kEdge};
}

std::optional<ScriptItem> stop_between(const Source& source, const ScriptItem& stop, Span room) {
    std::vector<Seconds> ends;
    for (const Seconds end : phrase_ends(source.marks))
        if (end >= room.start && end <= room.end) ends.push_back(end);
    std::ranges::stable_sort(ends, {}, [&](Seconds t) { return std::abs((t - stop.at).value()); });
    // A neighbour's own place would be one halt with two talks: only where there is no other.
    std::ranges::stable_partition(ends, [&](Seconds t) { return t != room.start && t != room.end; });
    const std::size_t now = lay_out(source).warnings.size();
    for (const Seconds end : ends)
        if (warnings_with(source, at(stop, end)) <= now) return at(stop, end);
    if (ends.empty()) return std::nullopt;
    return at(stop, ends.front());
}

std::optional<ScriptItem> aside_between(const Source& source, const CueSheet& sheet, const ScriptItem& aside,
                                        Span room) {
    const Seconds length(aside_length(source, Grid(sheet.frame_rate), aside).as_double());
    std::vector<Span> free;
    for (const Span& rest : free_for_aside(source, sheet, aside.id)) {
        const Span inside{std::max(rest.start, room.start), std::min(rest.end, room.end)};
        if (inside.end > inside.start) free.push_back(inside);
    }
    const auto start = nearest_fit(free, aside.at, length);
    return start ? std::optional(at(aside, *start)) : std::nullopt;
}

} // namespace

std::optional<ScriptItem> placed_between(const Source& source, const CueSheet& sheet, const ScriptItem& item,
                                         const ScriptItem* before, const ScriptItem* after) {
    if (is_frame(item)) return among_its_kind(item, before, after);
    const Span between = room(source, before, after);
    return item.kind == ScriptItemKind::stop ? stop_between(source, item, between)
                                             : aside_between(source, sheet, item, between);
}

std::optional<ScriptItem> at_neighbouring_phrase_end(const Source& source, const ScriptItem& stop,
                                                     bool later) {
    std::optional<Seconds> found;
    for (const Seconds end : phrase_ends(source.marks)) {
        if (later && end > stop.at + kEdge) return at(stop, end);
        if (!later && end < stop.at - kEdge) found = end;
    }
    return found ? std::optional(at(stop, *found)) : std::nullopt;
}

} // namespace luft::script
