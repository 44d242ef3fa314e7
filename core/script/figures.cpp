#include "script/figures.h"

#include "base/text.h"
#include "script/grid.h"
#include "script/others.h"

#include <algorithm>

namespace luft::script {
namespace {

/// True for a halt in which something is said: it has words, or was rehearsed without written ones.
bool is_spoken(const Source& source, const Segment& talk) {
    if (count_words(talk.text) > 0) return true;
    return std::ranges::any_of(source.items, [&](const project::ScriptItem& item) {
        return talk.item == item.id && item.rehearsed.has_value();
    });
}

/// Of the script's own recording, or of another performance's.
Rational heard_once(const CueSheet& sheet, std::optional<project::PerformanceId> other) {
    std::vector<std::pair<Rational, Rational>> heard;
    for (const Segment& s : sheet.segments)
        if (s.kind != SegmentKind::talk && s.other == other) heard.emplace_back(s.media_start, s.media_end);
    std::ranges::sort(heard);
    Rational sum;
    Rational until;
    for (const auto& [start, end] : heard) {
        if (end <= until) continue;
        sum += end - std::max(start, until);
        until = end;
    }
    return sum;
}

double share(Rational part, Rational whole) {
    return whole > Rational(0) ? (part / whole).as_double() : 0;
}

/// How much of a stretch is of one other performance.
Rational length_of(const Stretch& stretch, const CueSheet& sheet, project::PerformanceId other) {
    Rational sum;
    for (const auto& piece : stretch.pieces)
        if (sheet.segments[piece.segment].other == other) sum += piece.end - piece.start;
    return sum;
}

void sum_up_others(const Source& source, const std::vector<Stretch>& stretches, CueSheet& sheet) {
    const Grid grid(sheet.frame_rate);
    for (const Segment& s : sheet.segments) {
        if (!s.other) continue;
        auto of_it = std::ranges::find(sheet.others, *s.other, &QuotedOther::performance);
        if (of_it == sheet.others.end()) of_it = sheet.others.insert(of_it, {*s.other, {}, {}, 0, {}});
        of_it->quoted += s.programme_end - s.programme_start;
    }
    for (QuotedOther& other : sheet.others) {
        const Seconds length = other_of(source, other.performance)->performance.facts.duration;
        other.quoted_once = heard_once(sheet, other.performance);
        other.quoted_share = share(other.quoted_once, grid.time(grid.frames_in(length)));
        for (const Stretch& s : stretches)
            other.longest_quote = std::max(other.longest_quote, length_of(s, sheet, other.performance));
    }
}

} // namespace

std::vector<Stretch> stretches(const Source& source, const CueSheet& sheet) {
    std::vector<Stretch> out;
    Stretch now;
    const auto close = [&] {
        if (!now.pieces.empty()) out.push_back(std::move(now));
        now = {};
    };
    const auto extend = [&](std::size_t segment, Rational start, Rational end) {
        if (end <= start) return;
        now.pieces.push_back({segment, start, end});
        now.length += end - start;
    };
    for (std::size_t i = 0; i < sheet.segments.size(); ++i) {
        const Segment& s = sheet.segments[i];
        if (s.kind == SegmentKind::talk) {
            if (is_spoken(source, s)) close();
            continue;
        }
        Rational from = s.programme_start;
        for (const AsideCue& a : sheet.asides) {
            if (a.programme_start < s.programme_start || a.programme_start >= s.programme_end) continue;
            extend(i, from, a.programme_start);
            close();
            from = a.programme_end;
        }
        extend(i, from, s.programme_end);
    }
    close();
    return out;
}

void sum_up(const Source& source, Rational recording, CueSheet& sheet) {
    for (const Segment& s : sheet.segments)
        if (!s.other)
            (s.kind == SegmentKind::talk ? sheet.talk_time : sheet.quoted) +=
                s.programme_end - s.programme_start;
    sheet.quoted_once = heard_once(sheet, std::nullopt);
    sheet.quoted_share = share(sheet.quoted_once, recording);
    const auto all = stretches(source, sheet);
    for (const Stretch& s : all)
        sheet.longest_quote = std::max(sheet.longest_quote, s.length);
    sum_up_others(source, all, sheet);
}

} // namespace luft::script
