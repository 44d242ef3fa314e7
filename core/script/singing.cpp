#include "script/singing.h"

#include <algorithm>
#include <cmath>

namespace luft::script {
namespace {

constexpr Seconds kRunUp{0.5};

std::vector<Span> united(std::vector<Span> spans) {
    std::ranges::sort(spans, {}, [](const Span& s) { return s.start; });
    std::vector<Span> out;
    for (const Span& s : spans) {
        if (s.end <= s.start) continue;
        if (!out.empty() && s.start <= out.back().end)
            out.back().end = std::max(out.back().end, s.end);
        else
            out.push_back(s);
    }
    return out;
}

Seconds distance(Seconds a, Seconds b) {
    return Seconds(std::abs((a - b).value()));
}

} // namespace

bool counts(const project::Mark& mark) {
    return mark.state == project::MarkState::kept ||
           (mark.state == project::MarkState::proposed && mark.confidence() >= kLeastSure);
}

std::vector<Span> singing(const std::vector<project::Mark>& marks) {
    std::vector<Span> spans;
    for (const auto& m : marks)
        if (counts(m) && (m.kind() == project::MarkKind::note || m.kind() == project::MarkKind::phrase))
            spans.push_back(m.span());
    return united(std::move(spans));
}

std::vector<Span> phrases(const std::vector<project::Mark>& marks) {
    std::vector<Span> spans;
    for (const auto& m : marks)
        if (counts(m) && m.kind() == project::MarkKind::phrase) spans.push_back(m.span());
    if (spans.empty()) return singing(marks);
    std::ranges::sort(spans, {}, [](const Span& s) { return s.start; });
    return spans;
}

Seconds run_up(const std::vector<Span>& phrases, std::size_t phrase) {
    const Seconds before = phrase == 0 ? Seconds(0) : phrases[phrase - 1].end;
    const Seconds start = phrases[phrase].start;
    return std::max(start - kRunUp, std::min(before, start));
}

std::vector<Seconds> phrase_ends(const std::vector<project::Mark>& marks) {
    std::vector<Seconds> ends;
    for (const Span& phrase : phrases(marks))
        ends.push_back(phrase.end);
    std::ranges::sort(ends);
    return ends;
}

std::vector<Span> without(const std::vector<Span>& whole, std::vector<Span> taken) {
    taken = united(std::move(taken));
    std::vector<Span> out;
    for (const Span& w : whole) {
        Seconds from = w.start;
        for (const Span& t : taken) {
            if (t.end <= from || t.start >= w.end) continue;
            if (t.start > from) out.push_back({from, t.start});
            from = t.end;
        }
        if (from < w.end) out.push_back({from, w.end});
    }
    return out;
}

std::optional<Seconds> nearest_fit(const std::vector<Span>& free, Seconds wanted, Seconds length) {
    std::optional<Seconds> best;
    for (const Span& f : free) {
        if (f.length() < length) continue;
        const Seconds start = std::max(f.start, std::min(wanted, f.end - length));
        if (!best || distance(start, wanted) < distance(*best, wanted)) best = start;
    }
    return best;
}

std::optional<Seconds> nearest_of(const std::vector<Seconds>& times, Seconds wanted) {
    std::optional<Seconds> best;
    for (const Seconds t : times)
        if (!best || distance(t, wanted) < distance(*best, wanted)) best = t;
    return best;
}

const marks::Note* note_at(const std::vector<project::Mark>& marks, Seconds t) {
    for (const auto& m : marks)
        if (const auto* note = std::get_if<marks::Note>(&m.what))
            if (counts(m) && note->span.start + kEdge < t && t < note->span.end - kEdge) return note;
    return nullptr;
}

} // namespace luft::script
