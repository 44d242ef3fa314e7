// An invented pair of performances whose every counterpart is known.
#pragma once

#include "compare/align.h"
#include "compare/counterparts.h"
#include "profile/demo_source.h"
#include "sheet/pair_layout.h"

#include <algorithm>

namespace luft::sheet::test {

inline constexpr double kFaster = 1.25; ///< B against A
inline constexpr int kHigher = 4;       ///< semitones
inline constexpr Seconds kLater{2};

inline Seconds moved(Seconds a) {
    return kLater + a / kFaster;
}

inline Span moved(Span a) {
    return {moved(a.start), moved(a.end)};
}

/// The same performance, faster, later and higher; its curves too.
inline profile::Source moved(const profile::Source& a) {
    profile::Source b = a;
    b.performance.label = "B";
    for (auto& mark : b.marks) {
        if (auto* change = std::get_if<marks::Switch>(&mark.what))
            change->time = moved(change->time);
        else
            std::visit(
                [](auto& what) {
                    if constexpr (requires { what.span; }) what.span = moved(what.span);
                },
                mark.what);
        if (auto* note = std::get_if<marks::Note>(&mark.what)) note->pitch += MidiPitch(kHigher);
    }
    const Seconds end = moved(a.performance.facts.duration);
    b.performance.facts.duration = b.listening->duration = end;
    b.curves.f0 = Curve<Hertz>(static_cast<std::size_t>(nearest_frame(end).value));
    for (std::int64_t f = 0; f < nearest_frame(end).value; ++f)
        if (const auto pitch = a.curves.f0.at((time_of({f}) - kLater) * kFaster))
            b.curves.f0.set(static_cast<std::size_t>(f), Hertz(pitch->value() * std::exp2(kHigher / 12.0)));
    return b;
}

/// Span of the n-th phrase.
inline Span line_of(const profile::Source& source, std::size_t n) {
    for (const auto& mark : source.marks)
        if (mark.kind() == project::MarkKind::phrase && n-- == 0) return mark.span();
    return {};
}

inline void leave_out(profile::Source& source, Span line) {
    std::erase_if(source.marks, [&](const auto& m) { return line.contains(m.span().middle()); });
}

/// A doesn't sing the eighth line, B not the third.
struct Pair {
    profile::Source a = profile::demo::source(1), b = moved(a);
    compare::Alignment alignment;
    compare::Counterparts counterparts;
    std::vector<compare::Difference> differences;
    std::vector<compare::Pair> pins;

    Pair() {
        const Span only_b = line_of(a, 7), only_a = line_of(a, 2);
        compare::Stretch whole;
        for (const auto& mark : a.marks)
            if (mark.kind() == project::MarkKind::note)
                whole.knots.push_back({mark.span().start, moved(mark.span().start)});
        std::ranges::sort(whole.knots, {}, &compare::Pair::a);
        whole.confidence = {0.9};
        alignment.semitones = kHigher;
        alignment.stretches = {whole};
        leave_out(b, moved(only_a));
        leave_out(a, only_b);
        find();
    }
    /// Counterparts of the marks as they are now.
    void find() {
        counterparts =
            compare::find_counterparts(compare::side_of(a.listening, a.curves, a.marks),
                                       compare::side_of(b.listening, b.curves, b.marks), alignment);
    }
    /// A difference at the n-th note that both sing.
    void add_difference(std::size_t n, compare::DifferenceKind kind) {
        const auto side = compare::side_of(a.listening, a.curves, a.marks);
        const Span at = side.notes.at(counterparts.notes.at(n).a).span;
        differences.push_back({kind, at, moved(at), 1, compare::Unit::times, 0.001, {0.9}, "A sentence."});
    }
    [[nodiscard]] PairSource source() const { return {a, b, alignment, counterparts, differences, pins}; }
};

} // namespace luft::sheet::test
