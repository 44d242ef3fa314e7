#include "desk/play/line.h"

#include <algorithm>
#include <cmath>

namespace luft::desk {
namespace {

std::int64_t sample_at(Seconds t, SampleRate rate) {
    return std::max<std::int64_t>(std::llround(t.value() * rate.per_second), 0);
}

} // namespace

Line::Line(media::PlayableSound& sound, Seconds from, std::optional<Span> loop)
    : sound_(sound), stereo_(sound.format().channels), rate_(sound.format().rate),
      sample_(sample_at(from, rate_)) {
    set_loop(loop);
    if (loop_ && sample_ >= loop_->second) sample_ = loop_->first;
    sound_.go_to(sample_);
    if (loop_ && sample_ == loop_->first) enter_loop();
    pieces_.push_back({0, sample_});
}

void Line::set_loop(std::optional<Span> loop) {
    ended_ = false;                                    // the sound's end is none within a loop
    if (keep_ == Keep::reading) sound_.go_to(sample_); // where the kept frames have led
    keep_ = Keep::nothing;
    kept_ = {};
    loop_.reset();
    if (!loop) return;
    const std::int64_t start = sample_at(loop->start, rate_);
    loop_ = {start, std::max(sample_at(loop->end, rate_), start + sample_at(kShortestLoop, rate_))};
}

std::span<const float> Line::at(std::int64_t first, std::size_t count) {
    fill(first + static_cast<std::int64_t>(count));
    forget(first - rate_.per_second);
    const std::int64_t from = std::clamp(first, first_, end());
    const auto skipped = static_cast<std::size_t>(from - first_) * 2;
    return std::span(held_).subspan(skipped, std::min(2 * count, held_.size() - skipped));
}

void Line::fill(std::int64_t until) {
    while (!ended_ && end() < until) {
        std::int64_t wanted = until - end();
        if (loop_) wanted = std::min(wanted, loop_->second - sample_);
        const std::size_t before = held_.size();
        const std::size_t got = wanted > 0 ? pull(static_cast<std::size_t>(wanted), held_) : 0;
        fade_.over(std::span(held_).subspan(before));
        if (wanted > 0 && static_cast<std::int64_t>(got) == wanted) continue;
        // At the loop's end, or at the sound's. A loop that lies behind that gives nothing at all.
        if (loop_ && sample_ > loop_->first)
            turn_back();
        else
            ended_ = true;
    }
}

/// Appends frames of the sound; fewer at its end.
std::size_t Line::pull(std::size_t count, std::vector<float>& out) {
    std::size_t got = 0;
    if (keep_ == Keep::reading) {
        got = std::min(count, (kept_.size() - replayed_) / 2);
        const auto from = kept_.begin() + static_cast<std::ptrdiff_t>(replayed_);
        out.insert(out.end(), from, from + static_cast<std::ptrdiff_t>(2 * got));
        replayed_ += 2 * got;
        sample_ += static_cast<std::int64_t>(got);
        return got;
    }
    while (got < count) {
        if (used_ == ready_.size()) {
            ready_.clear();
            used_ = 0;
            const auto block = sound_.read();
            if (!block) break;
            stereo_.mix(block->samples, ready_);
        }
        const std::size_t n = std::min(2 * (count - got), ready_.size() - used_);
        const auto from = ready_.begin() + static_cast<std::ptrdiff_t>(used_);
        out.insert(out.end(), from, from + static_cast<std::ptrdiff_t>(n));
        if (keep_ == Keep::writing) kept_.insert(kept_.end(), from, from + static_cast<std::ptrdiff_t>(n));
        used_ += n;
        got += n / 2;
    }
    sample_ += static_cast<std::int64_t>(got);
    return got;
}

void Line::turn_back() {
    std::vector<float> tail;
    pull(fade_frames(rate_), tail);
    tail.resize(2 * fade_frames(rate_)); // silence after the sound's end
    fade_ = Fade(std::move(tail));
    sample_ = loop_->first;
    ready_.clear();
    used_ = 0;
    replayed_ = 0;
    pieces_.push_back({end(), sample_});
    if (keep_ == Keep::writing) keep_ = Keep::reading;
    if (keep_ == Keep::reading) return;
    sound_.go_to(sample_);
    enter_loop();
}

/// The loop's start comes next from the sound.
void Line::enter_loop() {
    const std::int64_t longest = sample_at(kLongestKept, rate_);
    keep_ = loop_->second - loop_->first <= longest ? Keep::writing : Keep::nothing;
}

void Line::forget(std::int64_t before) {
    if (before - first_ < rate_.per_second) return; // not at every call
    held_.erase(held_.begin(), held_.begin() + static_cast<std::ptrdiff_t>(before - first_) * 2);
    first_ = before;
    while (pieces_.size() > 1 && pieces_[1].frame <= before)
        pieces_.erase(pieces_.begin());
}

Seconds Line::media_at(double frame) const {
    auto piece = pieces_.begin();
    while (piece + 1 != pieces_.end() && static_cast<double>((piece + 1)->frame) <= frame)
        ++piece;
    return Seconds((static_cast<double>(piece->sample - piece->frame) + frame) / rate_.per_second);
}

std::optional<std::int64_t> Line::seam_after(double frame) const {
    for (const Piece& piece : pieces_)
        if (static_cast<double>(piece.frame) > frame) return piece.frame;
    return std::nullopt;
}

} // namespace luft::desk
