#include "cli/mark_by_hand.h"

#include "base/error.h"
#include "cli/typed.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace luft::cli {
namespace {

/// A breath between two lines usually takes a few tenths of a second; common practice, no source.
constexpr Seconds kUsualBreath{0.4};

constexpr const char* kByCoach = "set by the coach";

/// The middle value of those that there are.
template <class Unit>
std::optional<Unit> median_within(const Curve<Unit>& curve, Span span) {
    std::vector<float> values;
    for (const float v : curve.within(span))
        if (!std::isnan(v)) values.push_back(v);
    if (values.empty()) return std::nullopt;
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return Unit(static_cast<double>(*middle));
}

marks::Note note_by_hand(const project::Project& project, const project::Performance& performance,
                         Span span) {
    const voice::Curves curves = project.curves(performance.id);
    const auto pitch = median_within(curves.f0, span);
    if (!pitch)
        throw Error(Fault::bad_request, "No sung pitch was heard there, so there is no note to set.",
                    "Choose a span in which the voice sings.");
    const auto listening = project.listening(performance.id);
    marks::Note note;
    note.span = span;
    note.pitch = pitch_of(*pitch);
    const MidiPitch tuned = pitch_of(*pitch, listening ? listening->tuning : Hertz(440));
    note.cents = Cents(100 * (tuned.value() - std::round(tuned.value())));
    note.level = median_within(curves.level, span).value_or(Decibels(0));
    note.confidence = {1};
    note.evidence = kByCoach;
    return note;
}

} // namespace

Span span_by_hand(project::MarkKind kind, std::optional<Seconds> at, std::optional<Seconds> from,
                  std::optional<Seconds> to) {
    using project::MarkKind;
    if (kind == MarkKind::register_switch) {
        if (!at || from || to) throw UsageError("a switch stands --at one time");
        return {*at, *at};
    }
    if (at && !from && !to && kind == MarkKind::breath) return {*at, *at + kUsualBreath};
    if (at || !from || !to) throw UsageError("give both --from and --to");
    if (*to <= *from) throw UsageError("--to must be after --from");
    return {*from, *to};
}

project::Mark mark_by_hand(const project::Project& project, const project::Performance& performance,
                           project::MarkKind kind, Span span) {
    using project::MarkKind;
    project::Mark mark;
    mark.performance = performance.id;
    mark.origin = project::Origin::coach;
    mark.state = project::MarkState::kept;
    constexpr Confidence kCertain{1};
    switch (kind) {
    case MarkKind::note:
        mark.what = note_by_hand(project, performance, span);
        break;
    case MarkKind::breath:
        mark.what =
            marks::Breath{.span = span, .below_voice = {}, .confidence = kCertain, .evidence = kByCoach};
        break;
    case MarkKind::phrase:
        mark.what = marks::Phrase{.span = span, .confidence = kCertain, .evidence = kByCoach};
        break;
    case MarkKind::register_switch:
        mark.what = marks::Switch{.time = span.start, .confidence = kCertain, .evidence = kByCoach};
        break;
    }
    return mark;
}

} // namespace luft::cli
