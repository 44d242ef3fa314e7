// What is heard of the two, and what is stored about them.
#include "desk/work/versions.h"

#include <algorithm>

namespace luft::desk {
namespace {

using sheet::Which;

Span from_first_to_last(const std::vector<std::size_t>& which, const std::vector<marks::Phrase>& phrases) {
    return {phrases.at(which.front()).span.start, phrases.at(which.back()).span.end};
}

/// Of the list, the span nearest to a time; the first one without a time.
std::optional<Span> nearest(const std::vector<Span>& spans, std::optional<Seconds> at) {
    if (spans.empty()) return std::nullopt;
    if (!at) return spans.front();
    return *std::ranges::min_element(spans, {}, [&](Span s) {
        return std::max({Seconds(0), s.start - *at, *at - s.end});
    });
}

Span long_enough(Span span, Seconds end) {
    if (span.length() >= kLeastHeard) return span;
    const Seconds start = std::max(Seconds(0), std::min(span.middle() + kLeastHeard / 2, end) - kLeastHeard);
    return {start, std::min(start + kLeastHeard, std::max(end, span.end))};
}

} // namespace

/// Where the selected difference is in one of the two.
std::optional<Span> Versions::span(Which which) const {
    const auto* d = difference();
    if (!d) return std::nullopt;
    if (const auto& own = which == Which::a ? d->a : d->b) return own;
    const auto& elsewhere = which == Which::a ? d->b : d->a;
    if (!elsewhere) return std::nullopt;
    const Which from = sheet::other_of(which);
    const auto start = counterpart(from, elsewhere->start), end = counterpart(from, elsewhere->end);
    return start && end && *end > *start ? std::optional(Span{*start, *end}) : std::nullopt;
}

std::optional<Span> Versions::heard(Which which) const {
    if (!result_) return std::nullopt;
    const auto& c = result_->comparison;
    const auto& side = which == Which::a ? c.side_a : c.side_b;
    if (const auto* d = difference(); d && (d->a || d->b)) {
        const auto own = span(which);
        return own ? std::optional(long_enough(*own, side.duration)) : std::nullopt;
    }
    std::vector<Span> lines;
    for (const auto& pair : c.counterparts.phrases)
        lines.push_back(from_first_to_last(which == Which::a ? pair.a : pair.b, side.phrases));
    auto at = place(which);
    if (which != looked_at_)
        if (const auto looked = place(looked_at_)) at = counterpart(looked_at_, *looked);
    return nearest(lines, at);
}

std::deque<Turn> Versions::turn(Which which) const {
    const auto span = heard(which);
    if (!span)
        throw Error(Fault::bad_request, "There is nothing to hear of " + performance(which).label + " here.",
                    "Select a difference, or click into a line.");
    return {{which, *span}};
}

std::deque<Turn> Versions::in_turn() const {
    auto turns = turn(Which::a);
    turns.push_back(turn(Which::b).front());
    return turns;
}

std::deque<Turn> Versions::both() const {
    auto turns = turn(Which::a);
    turns.front().both = true;
    return turns;
}

void Versions::pin_places() {
    if (!place_[0] || !place_[1])
        throw Error(Fault::bad_request, "A pin needs a place in both lines.",
                    "Click into the upper line and into the lower one, where they sing the same; then pin.");
    const auto a = performance(Which::a).id, b = performance(Which::b).id;
    auto pins = pins_;
    std::erase_if(pins, [&](const project::Pin& pin) { return pin.a == *place_[0] || pin.b == *place_[1]; });
    pins.push_back({*place_[0], *place_[1]});
    session_.edit([&](project::Project& project) { project.set_pins(a, b, pins); });
}

void Versions::remove_pin(std::size_t index) {
    auto pins = pins_;
    if (index >= pins.size()) return;
    pins.erase(pins.begin() + static_cast<std::ptrdiff_t>(index));
    const auto a = performance(Which::a).id, b = performance(Which::b).id;
    session_.edit([&](project::Project& project) { project.set_pins(a, b, pins); });
}

void Versions::make_moment(Which in) {
    const auto* d = difference();
    if (!d || (!d->a && !d->b))
        throw Error(Fault::bad_request, "A moment is about one place.",
                    d ? "What holds for the whole has none; select a difference with a number."
                      : "Select a difference first: click on its sign, or press the arrow keys.");
    const Which there = sheet::other_of(in);
    const auto here = heard(in), beside = heard(there);
    if (!here)
        throw Error(Fault::bad_request, "Nothing of " + performance(in).label + " goes with this difference.",
                    "Make the moment in the other performance.");
    project::Moment moment;
    moment.performance = performance(in).id;
    moment.span = *here;
    moment.evidence = d->sentence;
    if (beside) moment.beside = {performance(there).id, *beside};
    const auto id = session_.edit([&](project::Project& project) { return project.add_moment(moment); });
    session_.show(moment.performance);
    session_.select(id);
}

} // namespace luft::desk
