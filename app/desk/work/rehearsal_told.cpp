// What a rehearsal tells of itself: how far it is, and what comes.
#include "desk/work/exact_times.h"
#include "desk/work/rehearsal.h"

#include <algorithm>

namespace luft::desk {

using script::Segment;
using script::SegmentKind;

Seconds Rehearsal::behind(Seconds now) const {
    Seconds late{0};
    for (std::size_t i = 0; i < at_; ++i) {
        const Segment& s = sheet_.segments[i];
        const auto took = s.item ? measured_.find(*s.item) : measured_.end();
        if (s.kind == SegmentKind::talk && took != measured_.end()) late += took->second - length(s);
    }
    if (talking()) late += std::max(Seconds(0), elapsed(now) - planned());
    return late;
}

Seconds Rehearsal::programme(Seconds now) const {
    if (state_ == State::waiting) return Seconds(0);
    const Segment* s = segment();
    const Seconds start = at_ < sheet_.segments.size() ? seconds(sheet_.segments[at_].programme_start)
                                                       : seconds(sheet_.running_time);
    if (!s) return start + behind(now);
    const Seconds in_plan = std::min(elapsed(now), planned());
    return start + in_plan + behind(now);
}

Seconds Rehearsal::programme_planned() const {
    return seconds(sheet_.running_time);
}

int Rehearsal::stops() const {
    int most = 0;
    for (const Segment& s : sheet_.segments)
        most = std::max(most, s.stop_number);
    return most;
}

const Segment* Rehearsal::next() const {
    return segment() && at_ + 1 < sheet_.segments.size() ? &sheet_.segments[at_ + 1] : nullptr;
}

const Segment* Rehearsal::next_talk() const {
    if (!segment()) return nullptr;
    for (std::size_t i = at_ + 1; i < sheet_.segments.size(); ++i)
        if (sheet_.segments[i].kind == SegmentKind::talk) return &sheet_.segments[i];
    return nullptr;
}

/// Programme time of the place that sounds, as planned.
Seconds Rehearsal::in_programme() const {
    const Segment& s = sheet_.segments[at_];
    return seconds(s.programme_start) + (position_ - seconds(s.media_start)) / s.speed.as_double();
}

const script::AsideCue* Rehearsal::aside() const {
    const Segment* s = segment();
    if (!s || s->kind != SegmentKind::play) return nullptr;
    const Seconds here = in_programme();
    for (const auto& cue : sheet_.asides)
        if (seconds(cue.programme_start) <= here && here < seconds(cue.programme_end)) return &cue;
    return nullptr;
}

std::optional<Rehearsal::Coming> Rehearsal::coming_aside() const {
    const Segment* s = segment();
    if (!s || s->kind != SegmentKind::play) return std::nullopt;
    const Seconds here = in_programme();
    std::optional<Coming> first;
    for (const auto& cue : sheet_.asides) {
        const Seconds wait = seconds(cue.programme_start) - here;
        if (wait > Seconds(0) && cue.programme_start < s->programme_end && (!first || wait < first->wait))
            first = Coming{&cue, wait};
    }
    return first;
}

std::vector<Rehearsal::Talk> Rehearsal::talks() const {
    std::vector<Talk> all;
    for (const Segment& s : sheet_.segments) {
        if (s.kind != SegmentKind::talk || !s.item) continue;
        Talk talk{*s.item, s.title, length(s), std::nullopt};
        if (const auto took = measured_.find(*s.item); took != measured_.end()) talk.measured = took->second;
        all.push_back(std::move(talk));
    }
    return all;
}

} // namespace luft::desk
