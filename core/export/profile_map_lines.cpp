#include "export/profile_map_lines.h"

#include "sheet/ribbon.h"

#include <algorithm>
#include <cmath>

namespace luft::exports {
namespace {

/// A longer phrase goes on on a new line (no source: what fits the page in a readable scale).
constexpr Seconds kLongest{16};
/// Without phrases a rest of this length ends a line.
constexpr Seconds kRest{1};

template <class Kind>
std::vector<const Kind*> counting(const profile::Source& source) {
    std::vector<const Kind*> out;
    for (const auto& mark : source.marks)
        if (const auto* kind = std::get_if<Kind>(&mark.what))
            if (mark.state == project::MarkState::kept ||
                (mark.state == project::MarkState::proposed && kind->confidence >= profile::kLeastConfidence))
                out.push_back(kind);
    return out;
}

std::vector<Span> sorted(std::vector<Span> spans) {
    std::erase_if(spans, [](Span s) { return s.length() <= Seconds(0); });
    std::ranges::sort(spans, {}, &Span::start);
    return spans;
}

std::vector<Span> spans_of(const profile::Source& source, const std::vector<const marks::Note*>& notes) {
    std::vector<Span> spans;
    // Unsure ones too: they only say where a line of the picture ends, and no note may be left out for that.
    for (const auto& mark : source.marks)
        if (mark.kind() == project::MarkKind::phrase && mark.state != project::MarkState::dropped)
            spans.push_back(mark.span());
    if (!spans.empty()) return sorted(std::move(spans));
    for (const auto* n : notes)
        if (spans.empty() || n->span.start - spans.back().end >= kRest)
            spans.push_back(n->span);
        else
            spans.back().end = std::max(spans.back().end, n->span.end);
    return sorted(std::move(spans));
}

} // namespace

std::vector<MapLine> map_lines(const profile::Source& source) {
    auto notes = counting<marks::Note>(source);
    std::erase_if(notes, [](const marks::Note* n) { return !std::isfinite(n->pitch.value()); });
    std::ranges::stable_sort(notes, {}, [](const marks::Note* n) { return n->span.start; });
    std::vector<MapLine> lines;
    for (const Span phrase : spans_of(source, notes)) {
        const int parts = std::max(1, static_cast<int>(std::ceil(phrase.length() / kLongest - 1e-9)));
        for (int i = 0; i < parts; ++i) {
            MapLine line;
            line.span = {phrase.start + phrase.length() * (double(i) / parts),
                         phrase.start + phrase.length() * (double(i + 1) / parts)};
            line.goes_on = i + 1 < parts;
            lines.push_back(line);
        }
    }
    const double tuning = sheet::retuned(source);
    // Two pointers: a song has thousands of notes and hundreds of lines.
    const auto place = [&](auto time, const auto& kinds, auto into, bool between) {
        std::size_t l = 0;
        for (const auto* k : kinds) {
            while (l + 1 < lines.size() && lines[l + 1].span.start <= time(k))
                ++l;
            if (l < lines.size() && (between || lines[l].span.contains(time(k)))) into(lines[l]).push_back(k);
        }
    };
    place([](const marks::Note* n) { return n->span.middle(); }, notes,
          [](MapLine & l) -> auto& { return l.notes; }, false);
    auto breaths = counting<marks::Breath>(source);
    std::ranges::stable_sort(breaths, {}, [](const marks::Breath* b) { return b->span.start; });
    place([](const marks::Breath* b) { return b->span.start; }, breaths,
          [](MapLine & l) -> auto& { return l.breaths; }, true);
    auto switches = counting<marks::Switch>(source);
    std::ranges::stable_sort(switches, {}, &marks::Switch::time);
    place([](const marks::Switch* s) { return s->time; }, switches,
          [](MapLine & l) -> auto& { return l.switches; }, false);

    std::erase_if(lines, [](const MapLine& l) { return l.notes.empty(); });
    for (auto& line : lines) {
        line.low = line.high = line.notes.front()->pitch.value() - tuning;
        for (const auto* n : line.notes) {
            line.low = std::min(line.low, n->pitch.value() - tuning);
            line.high = std::max(line.high, n->pitch.value() - tuning);
        }
    }
    return lines;
}

} // namespace luft::exports
