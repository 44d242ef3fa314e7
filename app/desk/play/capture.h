// Where the coach's voice comes from.
#pragma once

#include "base/units.h"

#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace luft::desk {

/// One channel of samples, full scale = 1, as a device records them. Made stopped. For one thread; the device
/// goes on while that thread is busy, and nothing is lost.
class Input {
  public:
    static constexpr SampleRate kRate{48000};

    virtual ~Input() = default;

    /// From now on; what was recorded before and not fetched is dropped.
    virtual void start() = 0;
    virtual void stop() = 0;
    /// Appends what has come since the last call.
    virtual void fetch(std::vector<float>& out) = 0;

    /// The device's name, for a person.
    [[nodiscard]] virtual std::string name() const = 0;
    /// Why nothing is recorded and what to do about it, in sentences; empty when all is well.
    [[nodiscard]] virtual std::string note() const = 0;
};

using InputMaker = std::function<std::unique_ptr<Input>()>;

/// The system's recording device through SDL; one that gives nothing, with the reason in its note, when none
/// can be opened. Call it from the thread that started the program.
std::unique_ptr<Input> open_input();

/// Records in pieces and shows how loud it is.
class Capture {
  public:
    /// How long a peak is shown. Common practice, no source.
    static constexpr Seconds kHold{0.3};

    explicit Capture(InputMaker input = open_input) : make_input_(std::move(input)) {}

    /// Opens the device, anew if it is open, and starts it. What goes wrong is in `note`.
    void start();
    /// Stops and closes it.
    void stop();
    [[nodiscard]] bool running() const { return input_ != nullptr; }

    /// What has come since the last call; valid until the next one. To be called often.
    std::span<const float> fetch();
    /// The highest peak of the last `kHold` against full scale, at most 0 dB; none when nothing has come.
    [[nodiscard]] std::optional<Decibels> level() const;

    /// As Input; empty when it isn't running.
    [[nodiscard]] std::string name() const { return input_ ? input_->name() : std::string(); }
    [[nodiscard]] std::string note() const { return input_ ? input_->note() : std::string(); }

  private:
    InputMaker make_input_;
    std::unique_ptr<Input> input_;
    std::vector<float> samples_;
    std::vector<float> shown_; ///< the last `kHold`
};

} // namespace luft::desk
