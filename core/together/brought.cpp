#include "together/brought.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace luft::together {
namespace {

constexpr Seconds kFade{0.02};     // beside a run; common practice, no source
constexpr std::size_t kFed = 1024; // samples of B at a time

/// 0 to 1 over the fade, as a raised cosine.
float gain(std::int64_t position, std::int64_t length, std::int64_t fade) {
    const std::int64_t inside = std::min(position + 1, length - position);
    if (inside >= fade) return 1;
    const double share = static_cast<double>(inside) / static_cast<double>(fade);
    return static_cast<float>(0.5 - 0.5 * std::cos(share * std::numbers::pi));
}

} // namespace

Brought::Brought(tape::MonoTape b, const compare::Alignment& alignment, double pitch)
    : tape_(std::move(b)), pitch_(pitch) {
    const double rate = tape_.rate().per_second;
    const compare::Pair* last = nullptr;
    for (const compare::Stretch& stretch : alignment.stretches) {
        const bool goes_on = last != nullptr && *last == stretch.knots.front();
        if (!goes_on) runs_.emplace_back();
        for (std::size_t i = goes_on ? 1 : 0; i < stretch.knots.size(); ++i)
            runs_.back().knots.push_back(
                {stretch.knots[i].b.value() * rate, stretch.knots[i].a.value() * rate});
        last = &stretch.knots.back();
    }
    const double room = kFade.value() * rate;
    for (std::size_t i = 0; i < runs_.size(); ++i) {
        const double start = runs_[i].knots.front().out, end = runs_[i].knots.back().out;
        const double before = i == 0 ? start : start - runs_[i - 1].knots.back().out,
                     after = i + 1 == runs_.size() ? 2 * room : runs_[i + 1].knots.front().out - end;
        runs_[i].start = std::llround(start - std::min(room, before / 2));
        runs_[i].end = std::llround(end + std::min(room, after / 2));
    }
}

void Brought::read(std::int64_t from, std::span<float> out) {
    const auto first = std::ranges::upper_bound(runs_, from, {}, &Run::end);
    for (auto run = first; !out.empty(); ++run) {
        const std::int64_t start =
            run == runs_.end() ? from + static_cast<std::int64_t>(out.size()) : run->start;
        const auto silent = static_cast<std::size_t>(
            std::clamp<std::int64_t>(start - from, 0, static_cast<std::int64_t>(out.size())));
        std::ranges::fill(out.first(silent), 0.0F);
        out = out.subspan(silent);
        from += static_cast<std::int64_t>(silent);
        if (out.empty()) break;
        const std::size_t sounds = std::min(out.size(), static_cast<std::size_t>(run->end - from));
        follow(*run, from, out.first(sounds));
        out = out.subspan(sounds);
        from += static_cast<std::int64_t>(sounds);
    }
}

void Brought::follow(const Run& run, std::int64_t from, std::span<float> out) {
    if (followed_ != &run || next_ != from) {
        followed_ = &run;
        next_ = from;
        made_.clear();
        follower_.emplace(tape_.rate(), run.knots, static_cast<double>(from), pitch_);
        fed_ = follower_->first();
    }
    std::vector<float> block(kFed);
    while (made_.size() < out.size()) {
        tape_.read(fed_, block);
        fed_ += static_cast<std::int64_t>(kFed);
        follower_->process(block, made_);
    }
    const auto fade = static_cast<std::int64_t>(kFade.value() * tape_.rate().per_second);
    for (std::size_t i = 0; i < out.size(); ++i)
        out[i] = made_[i] * gain(from - run.start + static_cast<std::int64_t>(i), run.end - run.start, fade);
    made_.erase(made_.begin(), made_.begin() + static_cast<std::ptrdiff_t>(out.size()));
    next_ += static_cast<std::int64_t>(out.size());
}

} // namespace luft::together
