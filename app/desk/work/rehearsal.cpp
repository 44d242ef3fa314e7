#include "desk/work/rehearsal.h"

#include "desk/work/exact_times.h"

#include <algorithm>

namespace luft::desk {

using script::Segment;
using script::SegmentKind;

void Rehearsal::begin(Seconds now, std::size_t step) {
    enter(step, now);
}

void Rehearsal::enter(std::size_t step, Seconds now, std::optional<Seconds> from) {
    at_ = std::min(step, sheet_.segments.size());
    playback_.playing = false;
    if (at_ == sheet_.segments.size()) {
        state_ = State::ended;
        return;
    }
    state_ = State::running;
    const Segment& s = sheet_.segments[at_];
    const Seconds start = seconds(s.media_start), end = seconds(s.media_end);
    position_ = std::clamp(from.value_or(start), start, end);
    looked_ = began_ = now;
    before_ = Seconds(0);
    if (s.kind == SegmentKind::talk)
        ++talk_turn_;
    else
        playback_ = {!s.other, position_, end, s.speed.as_double(), playback_.turn + 1};
}

void Rehearsal::go_on(Seconds now, std::optional<Seconds> recorded) {
    const Segment* s = segment();
    if (!s) return;
    if (talking() && s->item) {
        const Seconds took = recorded.value_or(elapsed(now));
        if (took >= kShortestTalk) measured_[*s->item] = took;
    }
    enter(at_ + 1, now);
}

void Rehearsal::back(Seconds now) {
    if (!segment()) return;
    if (elapsed(now) >= kJustBegun || at_ == 0) return enter(at_, now);
    const Segment& before = sheet_.segments[at_ - 1];
    if (before.kind == SegmentKind::play)
        enter(at_ - 1, now, seconds(before.media_end) - kRunUp);
    else
        enter(at_ - 1, now);
}

void Rehearsal::begin_again(Seconds now) {
    if (segment()) enter(at_, now);
}

void Rehearsal::pause(Seconds now) {
    if (state_ != State::running) return;
    if (talking()) before_ = elapsed(now);
    state_ = State::paused;
    playback_.playing = false;
}

void Rehearsal::resume(Seconds now) {
    if (state_ != State::paused) return;
    state_ = State::running;
    began_ = looked_ = now;
    if (talking() || elsewhere()) return;
    playback_.playing = true;
    playback_.from = position_;
    ++playback_.turn;
}

void Rehearsal::end() {
    state_ = State::ended;
    playback_.playing = false;
}

void Rehearsal::look(Seconds now, std::optional<Seconds> heard) {
    if (state_ != State::running || talking()) return;
    if (elsewhere()) heard.reset(); // it would be the script's own recording
    const Seconds by_clock = position_ + (now - looked_) * playback_.speed;
    // The sound may stand a little before the place where it was begun.
    position_ = std::max(heard.value_or(by_clock), playback_.from);
    looked_ = now;
    if (position_ >= playback_.to) enter(at_ + 1, now);
}

const Segment* Rehearsal::segment() const {
    const bool on = state_ == State::running || state_ == State::paused;
    return on ? &sheet_.segments[at_] : nullptr;
}

bool Rehearsal::talking() const {
    const Segment* s = segment();
    return s && s->kind == SegmentKind::talk;
}

bool Rehearsal::elsewhere() const {
    const Segment* s = segment();
    return s && s->other;
}

Seconds Rehearsal::elapsed(Seconds now) const {
    const Segment* s = segment();
    if (!s) return Seconds(0);
    if (s->kind != SegmentKind::talk) return (position_ - seconds(s->media_start)) / s->speed.as_double();
    return state_ == State::paused ? before_ : before_ + (now - began_);
}

Seconds Rehearsal::planned() const {
    const Segment* s = segment();
    return s ? length(*s) : Seconds(0);
}

} // namespace luft::desk
