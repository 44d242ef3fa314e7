#include "desk/play/engine.h"

#include <algorithm>
#include <cmath>

namespace luft::desk {
namespace {

double allowed_speed(const Settings& settings) {
    return std::clamp(settings.speed, signal::Stretcher::kSlowest, 1.0);
}

/// Where `count` frames stand of which the first is the line's frame `place`: split where the line turns
/// back.
std::vector<Stretch> course_of(const Line& line, double place, double speed, std::size_t count,
                               SampleRate rate) {
    std::vector<Stretch> course;
    const Seconds step(speed / rate.per_second);
    for (auto left = static_cast<std::int64_t>(count); left > 0;) {
        std::int64_t n = left;
        if (const auto seam = line.seam_after(place))
            n = std::min(left,
                         static_cast<std::int64_t>(std::ceil((static_cast<double>(*seam) - place) / speed)));
        n = std::max<std::int64_t>(n, 1);
        course.push_back({n, line.media_at(place), step});
        place += static_cast<double>(n) * speed;
        left -= n;
    }
    return course;
}

} // namespace

Engine::Engine(std::unique_ptr<media::PlayableSound> sound)
    : sound_(std::move(sound)), rate_(sound_->format().rate), tone_(rate_) {}

void Engine::begin(Seconds from, const Settings& settings) {
    pace_.reset();
    loop_ = settings.loop;
    line_.emplace(*sound_, from, loop_);
    pace_.emplace(*line_, rate_, 0, allowed_speed(settings));
    fade_ = {};
    tone_ = Tone(rate_);
    volume_ = std::clamp(settings.volume, 0.0, 1.0);
}

Engine::Chunk Engine::next(std::size_t count, const Settings& settings) {
    frames_.clear();
    if (!pace_) return {};
    if (loop_ != settings.loop) {
        loop_ = settings.loop;
        line_->set_loop(loop_);
    }
    if (const double speed = allowed_speed(settings); speed != pace_->speed()) change_speed(speed);
    const double place = pace_->place();
    const std::size_t got = pace_->pull(count, frames_);
    fade_.over(frames_);
    Chunk chunk{{}, course_of(*line_, place, pace_->speed(), got, rate_)};
    add_tone(chunk.course, settings.tone.get());
    turn_volume(std::clamp(settings.volume, 0.0, 1.0));
    chunk.frames = frames_;
    return chunk;
}

/// The stretcher's inside can't be carried over to another speed; the line still has what went into it.
void Engine::change_speed(double speed) {
    const auto here = std::llround(pace_->place());
    std::vector<float> old;
    pace_->pull(fade_frames(rate_), old);
    fade_ = Fade(std::move(old));
    pace_.emplace(*line_, rate_, here, speed);
}

void Engine::add_tone(const std::vector<Stretch>& course, const ToneAt* tone) {
    std::size_t at = 0;
    for (const Stretch& part : course) {
        const auto n = 2 * static_cast<std::size_t>(part.count);
        tone_.add(std::span(frames_).subspan(at, n), tone, part.media, part.step);
        at += n;
    }
}

/// Over the whole of the chunk, so that nothing clicks.
void Engine::turn_volume(double to) {
    if (volume_ == to && to == 1) return;
    const std::size_t count = frames_.size() / 2;
    for (std::size_t i = 0; i < frames_.size(); ++i) {
        const std::size_t frame = i / 2;
        const double share = static_cast<double>(frame + 1) / static_cast<double>(count);
        frames_[i] = static_cast<float>(frames_[i] * (volume_ + (to - volume_) * share));
    }
    volume_ = to;
}

} // namespace luft::desk
