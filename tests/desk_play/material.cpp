#include "desk_play/material.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstring>
#include <numbers>

namespace luft::desk::test {
namespace {

std::chrono::duration<double> length(double seconds) {
    return std::chrono::duration<double>(seconds);
}

class Bytes final : public ByteSource {
  public:
    explicit Bytes(std::string bytes) : bytes_(std::move(bytes)) {}
    [[nodiscard]] std::int64_t size() const override { return static_cast<std::int64_t>(bytes_.size()); }
    [[nodiscard]] std::string name() const override { return "song.wav"; }
    std::size_t read_at(std::int64_t offset, std::span<std::byte> into) override {
        if (offset < 0 || offset >= size()) return 0;
        const std::size_t n = std::min(into.size(), bytes_.size() - static_cast<std::size_t>(offset));
        std::memcpy(into.data(), bytes_.data() + offset, n);
        return n;
    }

  private:
    std::string bytes_;
};

long step_of(double value) {
    return std::lround(std::clamp(value, -1.0, 1.0) * 32767);
}

} // namespace

std::string wav(double length, int channels, const std::function<double(double, int)>& value) {
    std::string bytes;
    const auto number = [&](std::uint32_t x, int size) {
        for (int i = 0; i < size; ++i)
            bytes.push_back(static_cast<char>(x >> (8 * i)));
    };
    const auto count = static_cast<std::uint32_t>(std::lround(length * kRate));
    const std::uint32_t frame = 2 * static_cast<std::uint32_t>(channels);
    bytes += "RIFF";
    number(36 + count * frame, 4);
    bytes += "WAVEfmt ";
    number(16, 4);
    number(1, 2); // PCM
    number(static_cast<std::uint32_t>(channels), 2);
    number(kRate, 4);
    number(kRate * frame, 4);
    number(frame, 2);
    number(16, 2);
    bytes += "data";
    number(count * frame, 4);
    for (std::uint32_t n = 0; n < count; ++n)
        for (int c = 0; c < channels; ++c)
            number(static_cast<std::uint32_t>(step_of(value(static_cast<double>(n) / kRate, c))), 2);
    return bytes;
}

std::vector<float> samples(double length, int channels, const std::function<double(double, int)>& value) {
    std::vector<float> all;
    for (int n = 0; n < std::lround(length * kRate); ++n)
        for (int c = 0; c < channels; ++c)
            all.push_back(static_cast<float>(step_of(value(static_cast<double>(n) / kRate, c))) / 32768);
    return all;
}

double glide(double t, int channel) {
    return 0.5 *
           std::sin(2 * std::numbers::pi * (channel == 0 ? 200 * t + 15 * t * t : 300 * t + 11 * t * t));
}

double steady(double t, int) {
    return 0.5 * std::sin(2 * std::numbers::pi * 220 * t);
}

SourceMaker source_of(std::string bytes) {
    return [bytes = std::move(bytes)] { return std::make_unique<Bytes>(bytes); };
}

bool Recorder::Tape::wait_for(std::size_t count, double seconds) {
    std::unique_lock hold_it(lock);
    return more.wait_for(hold_it, length(seconds), [&] { return frames.size() >= 2 * count; });
}

bool Recorder::Tape::wait_for_queue(std::int64_t count) {
    std::unique_lock hold_it(lock);
    return more.wait_for(hold_it, length(5), [&] { return queued >= count; });
}

void Recorder::Tape::sound(std::int64_t count) {
    const std::scoped_lock hold_it(lock);
    queued = std::max<std::int64_t>(0, queued - count);
}

std::vector<float> Recorder::Tape::all() {
    const std::scoped_lock hold_it(lock);
    return frames;
}

std::int64_t Recorder::Tape::waiting() {
    const std::scoped_lock hold_it(lock);
    return queued;
}

void Recorder::Tape::hold(bool on) {
    const std::scoped_lock hold_it(lock);
    held = on;
    if (!on) queued = 0;
}

void Recorder::queue(std::span<const float> frames) {
    const std::scoped_lock hold(tape_->lock);
    tape_->frames.insert(tape_->frames.end(), frames.begin(), frames.end());
    if (tape_->held || !tape_->running) tape_->queued += static_cast<std::int64_t>(frames.size() / 2);
    tape_->more.notify_all();
}

std::int64_t Recorder::queued() const {
    const std::scoped_lock hold(tape_->lock);
    return tape_->queued;
}

std::int64_t Recorder::delay() const {
    const std::scoped_lock hold(tape_->lock);
    return tape_->delay;
}

void Recorder::clear() {
    const std::scoped_lock hold(tape_->lock);
    tape_->queued = 0;
    ++tape_->clears;
}

void Recorder::start() {
    const std::scoped_lock hold(tape_->lock);
    tape_->running = true;
    if (!tape_->held) tape_->queued = 0;
}

void Recorder::stop() {
    const std::scoped_lock hold(tape_->lock);
    tape_->running = false;
}

Desk::Desk() : player([this](SampleRate rate) { return std::make_unique<Recorder>(rate, tape); }) {
    player.on_ended([this] {
        const std::scoped_lock hold(lock_);
        ended_ = true;
        changed_.notify_all();
    });
}

bool Desk::wait_for_end(double seconds) {
    std::unique_lock hold(lock_);
    const bool came = changed_.wait_for(hold, length(seconds), [&] { return ended_; });
    ended_ = false;
    return came;
}

std::vector<float> channel(std::span<const float> frames, int which) {
    std::vector<float> one;
    for (std::size_t i = static_cast<std::size_t>(which); i < frames.size(); i += 2)
        one.push_back(frames[i]);
    return one;
}

double frequency(std::span<const float> x) {
    double first = -1, last = -1;
    int periods = -1;
    for (std::size_t i = 1; i < x.size(); ++i)
        if (x[i - 1] < 0 && x[i] >= 0) {
            last = static_cast<double>(i) - x[i] / (x[i] - x[i - 1]);
            if (first < 0) first = last;
            ++periods;
        }
    REQUIRE(periods > 0);
    return periods * kRate / (last - first);
}

double rms(std::span<const float> x) {
    double power = 0;
    for (const float v : x)
        power += v * v;
    return std::sqrt(power / static_cast<double>(x.size()));
}

double steepest(std::span<const float> x) {
    double most = 0;
    for (std::size_t i = 1; i < x.size(); ++i)
        most = std::max(most, static_cast<double>(std::abs(x[i] - x[i - 1])));
    return most;
}

} // namespace luft::desk::test
