#include "together/material.h"

#include "reference/aubio_onset.h"
#include "reference/aubio_pitch.h"
#include "signal/statistics.h"
#include "signal/stretch.h"
#include "singer/random.h"
#include "tools/memory_sound.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace luft::together::test {
namespace {

constexpr double kNear = 0.15; // seconds that a note may be from its place

Offsets offsets_of(const std::vector<std::pair<std::optional<double>, std::optional<double>>>& found) {
    Offsets out;
    std::vector<double> late, size;
    for (const auto& [left, right] : found) {
        if (!left || !right) {
            ++out.missed;
            continue;
        }
        late.push_back(1000 * (*right - *left));
        size.push_back(std::abs(late.back()));
    }
    out.notes = late.size();
    if (late.empty()) return out;
    out.lean_ms = signal::median(std::span<const double>(late)).value();
    out.median_ms = signal::median(std::span<const double>(size)).value();
    out.p95_ms = signal::quantile(std::span<const double>(size), 0.95).value();
    return out;
}

std::optional<double> nearest(const std::vector<Seconds>& found, double to) {
    std::optional<double> best;
    for (const Seconds t : found)
        if (std::abs(t.value() - to) < std::abs(best.value_or(to + kNear) - to)) best = t.value();
    return best;
}

/// Where the pitch passes from one side of `middle` to the other, nearest to a place.
std::optional<double> passes(const Curve<Hertz>& pitch, double middle, bool up, double place) {
    std::optional<double> best;
    const auto hop = kHop.value();
    const auto last = static_cast<std::int64_t>((place + kNear) / hop);
    for (auto i = static_cast<std::int64_t>((place - kNear) / hop); i < last; ++i) {
        const auto one = pitch.at(FrameIndex{i}), next = pitch.at(FrameIndex{i + 1});
        if (!one || !next) continue;
        const double low = pitch_of(*one).value() - middle, high = pitch_of(*next).value() - middle;
        if (up ? low >= 0 || high < 0 : low <= 0 || high > 0) continue;
        const double t = (static_cast<double>(i) + low / (low - high)) * hop;
        if (!best || std::abs(t - place) < std::abs(*best - place)) best = t;
    }
    return best;
}

} // namespace

Bursts bursts(double slower, std::uint64_t seed, SampleRate rate) {
    singer::Random score(77), random(seed * 13 + 1);
    Bursts out{{}, rate, {}};
    double at = 0.4;
    for (int i = 0; i < 30; ++i) {
        const double beats = 0.3 + 0.4 * score.uniform(), hertz = 150 * std::exp2(1.5 * score.uniform());
        const double length = beats * slower * std::exp(0.2 * random.bell());
        out.starts.emplace_back(at);
        const auto first = static_cast<std::size_t>(at * rate.per_second);
        const auto count = static_cast<std::size_t>((length - 0.1 * slower) * rate.per_second);
        out.samples.resize(first + count);
        for (std::size_t n = 0; n < count; ++n) {
            const double rise = static_cast<double>(n) / (0.003 * rate.per_second),
                         fall = static_cast<double>(count - n) / (0.02 * rate.per_second);
            double y = 0;
            for (int h = 1; h <= 12; ++h)
                y +=
                    std::sin(2 * std::numbers::pi * hertz * h * static_cast<double>(n) / rate.per_second) / h;
            out.samples[first + n] = static_cast<float>(0.2 * std::min({1.0, rise, fall}) * y);
        }
        at += length;
    }
    out.samples.resize(static_cast<std::size_t>((at + 0.5) * rate.per_second));
    return out;
}

compare::Alignment alignment_of(const Bursts& a, const Bursts& b) {
    compare::Alignment out;
    compare::Stretch stretch;
    for (std::size_t i = 0; i < a.starts.size(); ++i)
        stretch.knots.push_back({a.starts[i], b.starts[i]});
    out.stretches.push_back(stretch);
    return out;
}

InStep in_step(const Bursts& a, const Bursts& b) {
    using luft::test::MemorySound;
    return {{std::make_unique<MemorySound>(a.samples, a.rate), {}},
            {std::make_unique<MemorySound>(b.samples, b.rate), {}},
            alignment_of(a, b),
            false};
}

std::vector<float> played(InStep sound, double speed) {
    std::vector<float> out;
    if (speed == 1) {
        while (const auto block = sound.read())
            out.insert(out.end(), block->samples.begin(), block->samples.end());
        return out;
    }
    signal::Stretcher stretcher(sound.format().rate, 2, speed);
    while (const auto block = sound.read())
        stretcher.process(block->samples, out);
    stretcher.finish(out);
    return out;
}

std::vector<float> side(std::span<const float> stereo, int which) {
    std::vector<float> out;
    for (std::size_t i = static_cast<std::size_t>(which); i < stereo.size(); i += 2)
        out.push_back(stereo[i]);
    return out;
}

Offsets burst_offsets(std::span<const float> stereo, SampleRate rate, const std::vector<Seconds>& starts,
                      double speed) {
    const auto left = reference::aubio_onsets("energy", side(stereo, 0), rate),
               right = reference::aubio_onsets("energy", side(stereo, 1), rate);
    std::vector<std::pair<std::optional<double>, std::optional<double>>> found;
    for (const Seconds start : starts)
        found.emplace_back(nearest(left, start.value() / speed), nearest(right, start.value() / speed));
    return offsets_of(found);
}

Offsets sung_offsets(std::span<const float> stereo, const singer::Truth& left, double right_by,
                     double speed) {
    reference::AubioPitch tracker("yinfast");
    const auto on_left = tracker.track(side(stereo, 0)), on_right = tracker.track(side(stereo, 1));
    std::vector<std::pair<std::optional<double>, std::optional<double>>> found;
    for (std::size_t i = 1; i < left.notes.size(); ++i) {
        const singer::TrueNote &before = left.notes[i - 1], &note = left.notes[i];
        const double step = (note.pitch - before.pitch).value();
        const bool joined = note.span.start - before.span.end < Seconds(0.02);
        if (!joined || std::abs(step) < 0.9) continue;
        const double middle = before.pitch.value() + step / 2, place = note.span.start.value() / speed;
        found.emplace_back(passes(on_left, middle, step > 0, place),
                           passes(on_right, middle + right_by, step > 0, place));
    }
    return offsets_of(found);
}

} // namespace luft::together::test
