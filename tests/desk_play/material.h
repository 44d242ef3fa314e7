// What the tests of playing share: a recording whose every moment is known, an output that keeps what it
// gets, and measures of both.
#pragma once

#include "base/bytes.h"
#include "desk/play/output.h"
#include "desk/play/player.h"

#include <condition_variable>
#include <filesystem>
#include <functional>
#include <mutex>
#include <span>
#include <string>
#include <vector>

namespace luft::desk::test {

inline constexpr int kRate = 48000;

/// A recording as 16-bit WAV bytes (RIFF, 1991): `value` of time and channel, so long.
std::string wav(double length, int channels, const std::function<double(double, int)>& value);

/// Its samples as they are played: rounded to 16 bits, interleaved.
std::vector<float> samples(double length, int channels, const std::function<double(double, int)>& value);

/// Two tones that glide: left from 200 Hz up and right from 300 Hz up, different at every moment.
double glide(double t, int channel);
/// 220 Hz, both channels, half of full scale.
double steady(double t, int channel);

SourceMaker source_of(std::string bytes);

/// Keeps everything that is queued, and takes it out of the queue as fast as it comes (`pace` 0) or only when
/// the test says so.
class Recorder final : public Output {
  public:
    struct Tape {
        std::mutex lock;
        std::condition_variable more;
        std::vector<float> frames; ///< stereo
        std::int64_t queued = 0;
        std::int64_t delay = 0;
        bool held = false; ///< nothing leaves the queue
        bool running = false;
        int clears = 0;

        /// Waits until so many frames are there or `seconds` have passed; whether they are.
        bool wait_for(std::size_t count, double seconds = 5);
        /// Waits up to 5 s until so many frames wait to sound; whether they do.
        bool wait_for_queue(std::int64_t count);
        /// Lets so many of the queued frames sound.
        void sound(std::int64_t count);
        [[nodiscard]] std::vector<float> all();
        [[nodiscard]] std::int64_t waiting();
        void hold(bool on);
    };

    Recorder(SampleRate rate, std::shared_ptr<Tape> tape) : rate_(rate), tape_(std::move(tape)) {}
    [[nodiscard]] SampleRate rate() const override { return rate_; }
    void queue(std::span<const float> frames) override;
    [[nodiscard]] std::int64_t queued() const override;
    [[nodiscard]] std::int64_t delay() const override;
    void clear() override;
    void start() override;
    void stop() override;
    [[nodiscard]] std::string name() const override { return "recorder"; }
    [[nodiscard]] std::string note() const override { return {}; }

  private:
    SampleRate rate_;
    std::shared_ptr<Tape> tape_;
};

/// A player on a recorder.
struct Desk {
    std::shared_ptr<Recorder::Tape> tape = std::make_shared<Recorder::Tape>();
    Player player;
    /// Waits for the end of the sound; false when it doesn't come within so many seconds.
    bool wait_for_end(double seconds = 10);
    Desk();

  private:
    std::mutex lock_;
    std::condition_variable changed_;
    bool ended_ = false;
};

/// One channel of stereo frames.
std::vector<float> channel(std::span<const float> frames, int which = 0);
/// Frequency by the rising zero crossings.
double frequency(std::span<const float> x);
double rms(std::span<const float> x);
/// The largest step from one sample to the next.
double steepest(std::span<const float> x);

} // namespace luft::desk::test
