// The thread that keeps an output fed.
#pragma once

#include "base/bytes.h"
#include "desk/play/course.h"
#include "desk/play/engine.h"
#include "desk/play/output.h"

#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

namespace luft::desk {

using SourceMaker = std::function<std::unique_ptr<ByteSource>()>;
using SoundMaker = std::function<std::unique_ptr<media::PlayableSound>()>;

enum class PlayState {
    stopped, ///< nothing played yet, stopped, at the end, or broken off
    playing,
    paused, ///< goes on where it is
};

/// One opened sound and its output. Every function may be called from any thread but those that `ended` is
/// called on.
class Feeder {
  public:
    /// How far ahead of what sounds it is at work: a change of settings is heard after that.
    static constexpr Seconds kAhead{0.15};

    /// `ended` is called from the feeder's thread.
    Feeder(SoundMaker sound, std::unique_ptr<Engine> engine, std::unique_ptr<Output> output,
           std::function<void()> ended);
    Feeder(const Feeder&) = delete;
    Feeder& operator=(const Feeder&) = delete;
    ~Feeder() = default; // waits for the thread

    void play(Seconds from, const Settings& settings);
    void pause();
    void resume();
    void stop();
    void set(const Settings& settings);

    [[nodiscard]] Seconds position() const;
    [[nodiscard]] PlayState state() const;
    [[nodiscard]] std::string trouble() const;
    [[nodiscard]] const Output& output() const { return *output_; }

  private:
    using Hold = std::unique_lock<std::mutex>;
    void work(const std::stop_token& stop);
    void begin(Hold& hold);
    void run();
    void feed(Hold& hold);
    void end(Hold& hold);
    void break_off(const std::exception& fault);
    [[nodiscard]] Seconds heard() const;

    SoundMaker sound_;
    std::unique_ptr<Engine> engine_; ///< the thread's own
    std::unique_ptr<Output> output_;
    std::function<void()> ended_;
    const SampleRate rate_;

    mutable std::mutex lock_; ///< over all that follows
    std::condition_variable_any changed_;
    Settings settings_;
    PlayState state_ = PlayState::stopped;
    std::optional<Seconds> asked_; ///< to begin here, as soon as the thread comes to it
    std::int64_t turn_ = 0;        ///< counts plays and stops: what was made for an earlier one isn't wanted
    Course course_;
    bool running_ = false; ///< the output has been started since the last play or resume
    bool all_out_ = false; ///< the sound has given its last; it sounds out
    std::string trouble_;

    std::jthread thread_; ///< last: it uses all of the above
};

} // namespace luft::desk
