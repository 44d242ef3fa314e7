#include "script/shorten.h"

#include "base/text.h"
#include "script/figures.h"
#include "script/others.h"
#include "script/singing.h"

#include <algorithm>

namespace luft::script {
namespace {

using project::ScriptItem;
using project::ScriptItemKind;

/// This much is heard before a halt at least: with less nobody knows what is spoken about. Common practice,
/// no source.
constexpr Seconds kLeastHeard{4};

bool is_last(const CueSheet& sheet, std::size_t segment) {
    return std::none_of(sheet.segments.begin() + static_cast<std::ptrdiff_t>(segment) + 1,
                        sheet.segments.end(),
                        [](const Segment& s) { return s.kind != SegmentKind::talk || s.stop_number > 0; });
}

const ScriptItem* first_of(const Source& source, ScriptItemKind kind) {
    const auto at = std::ranges::find(source.items, kind, &ScriptItem::kind);
    return at == source.items.end() ? nullptr : &*at;
}

/// That item of the script, or a new one without words.
ScriptItem taken_or_new(const Source& source, const ScriptItem* item, ScriptItemKind kind) {
    if (item) return *item;
    ScriptItem made;
    made.performance = source.performance.id;
    made.kind = kind;
    return made;
}

/// Leaves out music from where `segment` begins to a later phrase: the earliest one after which at most
/// `most` is left, else the last one that leaves enough to hear. `until` bounds it (media time).
std::optional<Remedy> start_later(const Source& source, const CueSheet& sheet, std::size_t segment,
                                  Seconds until, Seconds most) {
    const Segment& s = sheet.segments[segment];
    const Seconds from = seconds(s.media_start);
    const auto sung = phrases(source.marks);
    std::optional<Seconds> start;
    for (std::size_t i = 0; i < sung.size(); ++i) {
        const Seconds t = run_up(sung, i);
        if (t <= from + Seconds(1) || t > until - kLeastHeard) continue;
        start = t;
        if (until - t <= most) break;
    }
    if (!start) return std::nullopt;
    const ScriptItem* before = nullptr; // the talk after which this music begins
    if (segment > 0 && sheet.segments[segment - 1].item) {
        const auto at = std::ranges::find(source.items, *sheet.segments[segment - 1].item, &ScriptItem::id);
        before = at == source.items.end() ? nullptr : &*at;
    } else {
        before = first_of(source, ScriptItemKind::opening);
    }
    ScriptItem item = taken_or_new(source, before, ScriptItemKind::opening);
    item.resume = *start;
    return Remedy{"Let the music begin at " + clock_text(*start), {std::move(item)}};
}

/// Ends the programme's music at the last phrase end that leaves at most `most` of it after `from`, else at
/// the first one; where no phrase ends there, with the last talk.
std::optional<Remedy> end_sooner(const Source& source, const CueSheet& sheet, std::size_t segment,
                                 Seconds from, Seconds most) {
    const Seconds to = seconds(sheet.segments[segment].media_end);
    std::optional<Seconds> end;
    for (const Seconds t : phrase_ends(source.marks)) {
        if (t < from + Seconds(1) || t > to - Seconds(1)) continue;
        if (!end || t - from <= most) end = t;
    }
    if (!end && from > Seconds(0) && from == seconds(sheet.segments[segment].media_start)) end = from;
    if (!end) return std::nullopt;
    ScriptItem item =
        taken_or_new(source, first_of(source, ScriptItemKind::closing), ScriptItemKind::closing);
    item.at = *end;
    return Remedy{"End the music at " + clock_text(*end), {std::move(item)}};
}

/// Quotes another performance only up to its last phrase end that leaves at most `most` of programme time,
/// else to its first one.
std::optional<Remedy> quote_less(const Source& source, const Segment& s, Seconds most) {
    const Other* other = other_of(source, *s.other);
    const auto stop = std::ranges::find(source.items, *s.item, &ScriptItem::id);
    if (!other || stop == source.items.end()) return std::nullopt;
    const Seconds from = seconds(s.media_start);
    std::optional<Seconds> end;
    for (const Seconds t : phrase_ends(other->marks)) {
        if (t < from + Seconds(1) || t > seconds(s.media_end) - kEdge) continue;
        if (!end || (t - from) / s.speed.as_double() <= most) end = t;
    }
    if (!end) return std::nullopt;
    ScriptItem item = *stop;
    item.quote->span.end = *end;
    return Remedy{"Quote " + other->performance.label + " only up to " + clock_text(*end), {std::move(item)}};
}

/// Media time of the first aside spoken in a segment, else the segment's end.
Seconds until_spoken(const CueSheet& sheet, const Segment& s) {
    for (const AsideCue& aside : sheet.asides)
        if (aside.programme_start >= s.programme_start && aside.programme_start < s.programme_end)
            return aside.media_start;
    return seconds(s.media_end);
}

/// Where its words end.
Seconds since_spoken(const CueSheet& sheet, const Segment& s) {
    Seconds from = seconds(s.media_start);
    for (const AsideCue& aside : sheet.asides)
        if (aside.programme_start >= s.programme_start && aside.programme_start < s.programme_end)
            from = aside.media_start + seconds(aside.programme_end - aside.programme_start);
    return from;
}

} // namespace

std::vector<Remedy> shorten_quote(const Source& source, const CueSheet& sheet, const Warning& warning) {
    std::vector<Remedy> out;
    const auto all = stretches(source, sheet);
    const auto stretch = std::ranges::find_if(
        all, [&](const Stretch& s) { return warning.programme_start == s.pieces.front().start; });
    if (stretch == all.end()) return out;
    const Seconds most = source.settings.longest_quote;
    const Seconds excess = seconds(stretch->length) - most;
    for (const Stretch::Piece& piece : stretch->pieces) {
        const Segment& s = sheet.segments[piece.segment];
        const Seconds length = seconds(piece.end - piece.start);
        if (s.kind == SegmentKind::quote)
            if (auto remedy = quote_less(source, s, length - excess)) out.push_back(std::move(*remedy));
        if (s.kind != SegmentKind::play) continue;
        const Seconds from = seconds(s.media_start + (piece.start - s.programme_start));
        if (piece.end == s.programme_end && is_last(sheet, piece.segment))
            if (auto remedy = end_sooner(source, sheet, piece.segment, from, length - excess))
                out.push_back(std::move(*remedy));
        if (piece.start == s.programme_start && !is_last(sheet, piece.segment))
            if (auto remedy = start_later(source, sheet, piece.segment, from + length, length - excess))
                out.push_back(std::move(*remedy));
    }
    const auto waits_for_words = [&](const ScriptItem& item) {
        return item.kind == ScriptItemKind::stop && warning.remedy && item.at == *warning.remedy;
    };
    if (!warning.remedy || std::ranges::any_of(source.items, waits_for_words)) return out;
    ScriptItem stop = taken_or_new(source, nullptr, ScriptItemKind::stop);
    stop.at = *warning.remedy;
    out.push_back({"Halt at " + clock_text(stop.at) + ", for words of yours", {std::move(stop)}});
    return out;
}

std::vector<Remedy> shorten_share(const Source& source, const CueSheet& sheet,
                                  std::optional<project::PerformanceId> other) {
    std::vector<Remedy> out;
    const Share quoted = share_of(sheet, other);
    if (!source.settings.most_quoted_share || quoted.share <= 0) return out;
    const Seconds recording = quoted.once / quoted.share;
    const Seconds excess = quoted.once - recording * *source.settings.most_quoted_share;
    std::vector<std::size_t> order;
    const SegmentKind kind = other ? SegmentKind::quote : SegmentKind::play;
    for (std::size_t i = 0; i < sheet.segments.size(); ++i)
        if (sheet.segments[i].kind == kind && sheet.segments[i].other == other) order.push_back(i);
    const auto length = [&](std::size_t i) {
        return sheet.segments[i].media_end - sheet.segments[i].media_start;
    };
    std::ranges::stable_sort(order, [&](std::size_t a, std::size_t b) { return length(a) > length(b); });
    for (const std::size_t i : order) {
        const Segment& s = sheet.segments[i];
        const Seconds wanted = seconds(length(i)) - excess;
        if (other) {
            if (auto remedy = quote_less(source, s, wanted / s.speed.as_double()))
                out.push_back(std::move(*remedy));
            continue;
        }
        auto remedy = is_last(sheet, i) ? end_sooner(source, sheet, i, since_spoken(sheet, s), wanted)
                                        : start_later(source, sheet, i, until_spoken(sheet, s), wanted);
        if (remedy) out.push_back(std::move(*remedy));
    }
    return out;
}

} // namespace luft::script
