#include "desk/work/rehearsal_words.h"

#include "desk/work/exact_times.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace luft::desk {
namespace {

using script::Segment;
using script::SegmentKind;

constexpr Seconds kWorthSaying{0.5}; ///< a smaller difference rounds to nothing

std::string titled(const Segment& s, int stops) {
    if (s.kind == SegmentKind::play) return "Music";
    const std::string stop = "Stop " + std::to_string(s.stop_number);
    if (s.kind == SegmentKind::talk && s.stop_number > 0 && s.title.starts_with(stop))
        return stop + " of " + std::to_string(stops) + s.title.substr(stop.size());
    return s.title;
}

std::string later(Seconds late) {
    if (late >= kWorthSaying) return ", " + minutes(late) + " later than planned";
    if (-late >= kWorthSaying) return ", " + minutes(-late) + " earlier than planned";
    return {};
}

} // namespace

std::string minutes(Seconds t) {
    const long long s = std::llround(std::max(0.0, t.value()));
    std::array<char, 48> text{};
    if (s >= 3600)
        std::snprintf(text.data(), text.size(), "%lld:%02lld:%02lld", s / 3600, s / 60 % 60, s % 60);
    else
        std::snprintf(text.data(), text.size(), "%lld:%02lld", s / 60, s % 60);
    return text.data();
}

std::string step_words(const Rehearsal& rehearsal) {
    const Segment* s = rehearsal.segment();
    return s ? titled(*s, rehearsal.stops()) : std::string();
}

std::string next_words(const Rehearsal& rehearsal) {
    if (!rehearsal.segment()) return {};
    const Segment* s = rehearsal.next();
    if (!s) return "then the end";
    const std::string long_as = minutes(length(*s));
    switch (s->kind) {
    case SegmentKind::talk:
        return "then " + s->title;
    case SegmentKind::play:
        return length(*s) < kWorthSaying ? "then a moment of music" : "then " + long_as + " of music";
    case SegmentKind::quote:
    case SegmentKind::replay:
        break;
    }
    std::string again = s->title;
    if (again.starts_with("Again") || again.starts_with("Compare"))
        again[0] = static_cast<char>(again[0] - 'A' + 'a');
    return "then " + again + ", " + long_as;
}

std::string step_time_words(const Rehearsal& rehearsal, Seconds now) {
    const Seconds elapsed = rehearsal.elapsed(now), planned = rehearsal.planned();
    // Both are said in whole seconds, so their difference is as well.
    const double over = std::floor(elapsed.value()) - std::round(planned.value());
    const std::string so_far = minutes(Seconds(std::floor(elapsed.value())));
    if (over >= 1) return so_far + ", " + minutes(Seconds(over)) + " over the planned " + minutes(planned);
    return so_far + " of " + minutes(planned);
}

std::string programme_words(const Rehearsal& rehearsal, Seconds now) {
    return "Programme " + minutes(rehearsal.programme(now)) + " of " +
           minutes(rehearsal.programme_planned()) + later(rehearsal.behind(now));
}

std::string difference_words(const Rehearsal::Talk& talk) {
    if (!talk.measured) return "not measured";
    const Seconds longer = *talk.measured - talk.planned;
    if (longer >= kWorthSaying) return minutes(longer) + " longer";
    if (-longer >= kWorthSaying) return minutes(-longer) + " shorter";
    return "as planned";
}

std::string sum_words(const Rehearsal& rehearsal) {
    Seconds planned{0}, measured{0};
    int count = 0, all = 0;
    for (const auto& talk : rehearsal.talks()) {
        ++all;
        if (!talk.measured) continue;
        ++count;
        planned += talk.planned;
        measured += *talk.measured;
    }
    if (count == 0) return "No talk was spoken to its end, so nothing was measured.";
    return "Measured " + std::to_string(count) + " of " + std::to_string(all) +
           (all == 1 ? " talk: " : " talks: ") + minutes(measured) + " instead of " + minutes(planned) +
           ". With these times the programme runs " +
           minutes(rehearsal.programme_planned() + measured - planned) + ".";
}

} // namespace luft::desk
