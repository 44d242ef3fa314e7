#include "compare/path.h"

#include "compare/pins.h"
#include "compare/runs.h"
#include "compare/trust.h"

#include <algorithm>

namespace luft::compare {
namespace {

constexpr Seconds kNear{0.15};   // a mark and the path; own value
constexpr Seconds kJoined{0.06}; // notes nearer than this have no end of their own, as in profile/material.h
constexpr Seconds kLongest{2};   // without a knot
constexpr Seconds kStretchLength{8}; // then a new stretch begins; about a phrase
constexpr Seconds kLeastStep{0.04};  // between knots

std::vector<Seconds> starts(const std::vector<marks::Note>& notes) {
    std::vector<Seconds> out;
    for (const marks::Note& n : notes)
        out.push_back(n.span.start);
    return out;
}

std::vector<Seconds> ends(const std::vector<marks::Note>& notes) {
    std::vector<Seconds> out;
    for (std::size_t i = 0; i < notes.size(); ++i)
        if (i + 1 == notes.size() || notes[i + 1].span.start - notes[i].span.end > kJoined)
            out.push_back(notes[i].span.end);
    std::ranges::sort(out);
    return out;
}

/// Where the run is on B at a time of A: a span where A waits.
Span across(const Run& run, Seconds a) {
    const auto first = std::ranges::lower_bound(run.corners, a, {}, &Pair::a);
    const auto last = std::ranges::upper_bound(run.corners, a, {}, &Pair::a);
    if (first == run.corners.end()) return {run.corners.back().b, run.corners.back().b};
    if (first != last) return {first->b, (last - 1)->b};
    if (first == run.corners.begin()) return {first->b, first->b};
    const Pair &left = *(first - 1), &right = *first;
    const Seconds b = left.b + (right.b - left.b) * ((a - left.a) / (right.a - left.a));
    return {b, b};
}

/// Pairs of marks of one kind that the run nearly goes through: each the other's nearest. Both in order.
void add_marks(std::vector<Pair>& knots, const Run& run, const std::vector<Seconds>& of_a,
               const std::vector<Seconds>& of_b) {
    const auto distance = [](Span there, Seconds b) {
        return std::max({Seconds(0), there.start - b, b - there.end});
    };
    for (std::size_t i = 0; i < of_a.size(); ++i) {
        if (of_a[i] < run.corners.front().a || of_a[i] > run.corners.back().a) continue;
        const Span there = across(run, of_a[i]);
        const auto first = std::ranges::lower_bound(of_b, there.start - kNear);
        const auto last = std::upper_bound(first, of_b.end(), there.end + kNear);
        if (first == last) continue;
        const Seconds b = *std::min_element(
            first, last, [&](Seconds x, Seconds y) { return distance(there, x) < distance(there, y); });
        // The path rises, so that no other mark of A can be nearer where its neighbours aren't.
        const auto nearer = [&](std::size_t other) {
            return distance(across(run, of_a[other]), b) - distance(there, b);
        };
        if (i > 0 && nearer(i - 1) <= Seconds(0)) continue;
        if (i + 1 < of_a.size() && nearer(i + 1) < Seconds(0)) continue;
        knots.push_back({of_a[i], b});
    }
}

/// Leaves out knots that stand too near, go backwards or are steeper than anybody sings.
std::vector<Pair> rising(std::vector<Pair> knots, const std::vector<Pair>& pins) {
    constexpr double kSteepest = 8;
    std::ranges::stable_sort(knots, {}, [](const Pair& p) { return p.a + p.b; });
    const auto pinned = [&](const Pair& p) { return std::ranges::find(pins, p) != pins.end(); };
    std::vector<Pair> out;
    for (const Pair& p : knots) {
        while (!out.empty() && pinned(p) && !pinned(out.back()) &&
               (p.a - out.back().a < kLeastStep || p.b - out.back().b < kLeastStep))
            out.pop_back();
        if (!out.empty()) {
            const Seconds da = p.a - out.back().a, db = p.b - out.back().b;
            const Seconds least = pinned(p) ? Seconds(1e-6) : kLeastStep;
            if (da < least || db < least) continue;
            if (!pinned(p) && (da > db * kSteepest || db > da * kSteepest)) continue;
        }
        out.push_back(p);
    }
    return out;
}

std::vector<Pair> knots_of(const Run& run, const Side& a, const Side& b, const std::vector<Pair>& pins) {
    std::vector<Pair> knots;
    add_marks(knots, run, starts(a.notes), starts(b.notes));
    add_marks(knots, run, ends(a.notes), ends(b.notes));
    for (const Pair& p : pins)
        if (p.a >= run.corners.front().a && p.a <= run.corners.back().a && p.b >= run.corners.front().b &&
            p.b <= run.corners.back().b)
            knots.push_back(p);
    knots.push_back(run.corners.front());
    std::vector<Pair> solid = rising(std::move(knots), pins), out;
    solid.push_back(run.corners.back());
    for (const Pair& p : solid) {
        while (!out.empty() && p.a - out.back().a > kLongest * 2) {
            const Seconds t = out.back().a + kLongest;
            out.push_back({t, across(run, t).middle()});
        }
        out.push_back(p);
    }
    return rising(std::move(out), pins);
}

void add_stretches(Alignment& out, const std::vector<Pair>& knots) {
    Stretch stretch;
    for (std::size_t i = 0; i < knots.size(); ++i) {
        stretch.knots.push_back(knots[i]);
        const bool last = i + 1 == knots.size();
        const bool full = knots[i].a - stretch.knots.front().a >= kStretchLength &&
                          knots.back().a - knots[i].a >= kStretchLength / 2;
        if ((!last && !full) || stretch.knots.size() < 2) continue;
        out.stretches.push_back(std::move(stretch));
        stretch = {};
        stretch.knots.push_back(knots[i]);
    }
}

void add_alone(std::vector<Alone>& to, const Curve<Hertz>& f0, Span span) {
    if (span.length() < kLeastAlone) return;
    const auto frames = f0.within(span);
    const auto sung = std::ranges::count_if(frames, [](float v) { return !std::isnan(v); });
    to.push_back({span, static_cast<double>(sung) >= 0.2 * static_cast<double>(frames.size()) && sung > 0});
}

} // namespace

void lay_path(Alignment& out, const std::vector<Run>& runs, const Side& a, const Side& b,
              const std::vector<Pair>& pins) {
    for (const Run& run : runs) {
        const std::vector<Pair> knots = knots_of(run, a, b, pins);
        if (knots.size() < 2) continue;
        const std::size_t first = out.stretches.size();
        add_stretches(out, knots);
        for (std::size_t i = first; i < out.stretches.size(); ++i)
            judge(out.stretches[i], run, a, b);
    }
    leave_out_chance(out.stretches, pins);
    obey(out.stretches, pins);
    add_lone_pins(out.stretches, pins, {a.duration, b.duration});
    Pair done{};
    for (const Stretch& s : out.stretches) {
        add_alone(out.only_a, a.f0, {done.a, s.a().start});
        add_alone(out.only_b, b.f0, {done.b, s.b().start});
        done = s.knots.back();
    }
    add_alone(out.only_a, a.f0, {done.a, a.duration});
    add_alone(out.only_b, b.f0, {done.b, b.duration});
}

} // namespace luft::compare
