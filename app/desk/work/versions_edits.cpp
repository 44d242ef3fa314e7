// What is heard of the two, and what is stored about them.
#include "desk/work/versions.h"

#include <algorithm>
#include <array>
#include <limits>

namespace luft::desk {
namespace {

using sheet::Which;

Span from_first_to_last(const std::vector<std::size_t>& which, const std::vector<marks::Phrase>& phrases) {
    return {phrases.at(which.front()).span.start, phrases.at(which.back()).span.end};
}

/// What belongs together in both; nothing where only the other one sings.
using Line = std::array<std::optional<Span>, 2>;

std::vector<Line> lines_of(const compare::Comparison& c) {
    std::vector<Line> lines;
    for (const auto& pair : c.counterparts.phrases)
        lines.push_back(
            {from_first_to_last(pair.a, c.side_a.phrases), from_first_to_last(pair.b, c.side_b.phrases)});
    for (const std::size_t i : c.counterparts.phrases_only_a)
        lines.push_back({c.side_a.phrases.at(i).span, std::nullopt});
    for (const std::size_t i : c.counterparts.phrases_only_b)
        lines.push_back({std::nullopt, c.side_b.phrases.at(i).span});
    return lines;
}

/// The one that is nearest to a time of one of the two.
const Line& nearest(const std::vector<Line>& lines, Which which, Seconds at) {
    return *std::ranges::min_element(lines, {}, [&](const Line& line) {
        const auto& own = line[sheet::index_of(which)];
        return own ? std::max({Seconds(0), own->start - at, at - own->end})
                   : Seconds(std::numeric_limits<double>::infinity());
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
    const auto lines = lines_of(c);
    if (lines.empty()) return std::nullopt;
    const auto at = place(looked_at_);
    return (at ? nearest(lines, looked_at_, *at) : lines.front())[sheet::index_of(which)];
}

std::deque<Turn> Versions::turn(Which which) const {
    const std::string& label = performance(which).label;
    if (!result_) throw Error(Fault::bad_request, lacking());
    const auto span = heard(which);
    if (!span)
        throw Error(Fault::bad_request, "There is nothing to hear of " + label + " here.",
                    "Select a difference, or click into a line.");
    return {{which, *span}};
}

std::deque<Turn> Versions::in_turn() const {
    std::deque<Turn> turns;
    for (const Which which : sheet::kBoth)
        if (const auto span = heard(which)) turns.push_back({which, *span});
    return turns.empty() ? turn(Which::a) : turns; // which says why
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
