#include "desk/play/feeder.h"

#include "base/error.h"

#include <algorithm>
#include <chrono>
#include <utility>

namespace luft::desk {
namespace {

using namespace std::chrono_literals;

constexpr Seconds kChunk{0.02}; // made at a time
constexpr auto kLook = 5ms;     // between two looks at a full queue
constexpr Seconds kBehind{0.5}; // what has sounded is kept so long: the output's delay is in it

} // namespace

Feeder::Feeder(SoundMaker sound, std::unique_ptr<Engine> engine, std::unique_ptr<Output> output,
               std::function<void()> ended)
    : sound_(std::move(sound)), engine_(std::move(engine)), output_(std::move(output)),
      ended_(std::move(ended)), rate_(engine_->rate()),
      thread_([this](const std::stop_token& stop) { work(stop); }) {}

void Feeder::play(Seconds from, const Settings& settings) {
    const Hold hold(lock_);
    settings_ = settings;
    asked_ = from;
    ++turn_;
    output_->stop();
    output_->clear();
    course_.begin(from);
    all_out_ = running_ = false;
    trouble_.clear();
    state_ = PlayState::playing;
    changed_.notify_all();
}

void Feeder::pause() {
    const Hold hold(lock_);
    if (state_ != PlayState::playing) return;
    output_->stop();
    state_ = PlayState::paused;
}

void Feeder::resume() {
    const Hold hold(lock_);
    if (state_ != PlayState::paused) return;
    running_ = false;
    state_ = PlayState::playing;
    changed_.notify_all();
}

void Feeder::stop() {
    const Hold hold(lock_);
    if (state_ == PlayState::stopped) return;
    const Seconds here = heard();
    ++turn_;
    asked_.reset();
    output_->stop();
    output_->clear();
    course_.begin(here);
    state_ = PlayState::stopped;
}

void Feeder::set(const Settings& settings) {
    const Hold hold(lock_);
    settings_ = settings;
}

Seconds Feeder::heard() const {
    return course_.at(course_.end() - output_->queued() - output_->delay());
}

Seconds Feeder::position() const {
    const Hold hold(lock_);
    return heard();
}

PlayState Feeder::state() const {
    const Hold hold(lock_);
    return state_;
}

std::string Feeder::trouble() const {
    const Hold hold(lock_);
    return trouble_;
}

void Feeder::work(const std::stop_token& stop) {
    Hold hold(lock_);
    const auto ahead = static_cast<std::int64_t>(kAhead.value() * rate_.per_second);
    while (!stop.stop_requested()) {
        if (asked_)
            begin(hold);
        else if (state_ != PlayState::playing)
            changed_.wait(hold, stop, [&] { return asked_ || state_ == PlayState::playing; });
        else if (!all_out_ && output_->queued() < ahead)
            feed(hold);
        else if (!running_)
            run();
        else if (all_out_ && output_->queued() == 0)
            end(hold);
        else
            changed_.wait_for(hold, stop, kLook, [&] { return asked_.has_value(); });
    }
}

void Feeder::begin(Hold& hold) {
    const Seconds from = *std::exchange(asked_, std::nullopt);
    const Settings settings = settings_;
    const std::int64_t turn = turn_;
    hold.unlock();
    try {
        if (!engine_) engine_ = std::make_unique<Engine>(sound_());
        engine_->begin(from, settings);
        hold.lock();
    } catch (const std::exception& e) {
        if (!hold.owns_lock()) hold.lock();
        if (turn == turn_) break_off(e);
    }
}

/// Once the queue is full, so that it doesn't stutter at once.
void Feeder::run() {
    output_->start();
    running_ = true;
}

void Feeder::feed(Hold& hold) {
    const Settings settings = settings_;
    const std::int64_t turn = turn_;
    hold.unlock();
    try {
        const auto count = static_cast<std::size_t>(kChunk.value() * rate_.per_second) + 1;
        const Engine::Chunk chunk = engine_->next(count, settings);
        hold.lock();
        if (turn != turn_) return;
        output_->queue(chunk.frames);
        for (const Stretch& stretch : chunk.course)
            course_.add(stretch);
        course_.forget(course_.end() - output_->queued() -
                       static_cast<std::int64_t>(kBehind.value() * rate_.per_second));
        all_out_ = chunk.frames.empty();
    } catch (const std::exception& e) {
        if (!hold.owns_lock()) hold.lock();
        if (turn == turn_) break_off(e);
    }
}

/// What is queued still sounds.
void Feeder::break_off(const std::exception& fault) {
    const auto* error = dynamic_cast<const Error*>(&fault);
    trouble_ = fault.what();
    if (error != nullptr && !error->advice().empty()) trouble_ += " " + error->advice();
    engine_.reset(); // opened anew at the next play
    all_out_ = true;
}

void Feeder::end(Hold& hold) {
    course_.begin(course_.at(course_.end()));
    output_->stop();
    state_ = PlayState::stopped;
    hold.unlock();
    if (ended_) ended_();
    hold.lock();
}

} // namespace luft::desk
