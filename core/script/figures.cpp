#include "script/figures.h"

#include "base/text.h"

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

Rational heard_once(const CueSheet& sheet) {
    std::vector<std::pair<Rational, Rational>> heard;
    for (const Segment& s : sheet.segments)
        if (s.kind != SegmentKind::talk) heard.emplace_back(s.media_start, s.media_end);
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
        (s.kind == SegmentKind::talk ? sheet.talk_time : sheet.quoted) += s.programme_end - s.programme_start;
    sheet.quoted_once = heard_once(sheet);
    if (recording > Rational(0)) sheet.quoted_share = (sheet.quoted_once / recording).as_double();
    for (const Stretch& s : stretches(source, sheet))
        sheet.longest_quote = std::max(sheet.longest_quote, s.length);
}

} // namespace luft::script
