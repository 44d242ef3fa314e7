// Where sound goes.
#pragma once

#include "base/units.h"

#include <cstdint>
#include <functional>
#include <memory>
#include <span>
#include <string>

namespace luft::desk {

/// A queue of stereo samples that sound one after the other. A frame is one sample of both channels. All
/// functions may be called from any thread. Made stopped.
class Output {
  public:
    virtual ~Output() = default;

    [[nodiscard]] virtual SampleRate rate() const = 0;

    /// Appends frames: left, right, left, right …, full scale = 1.
    virtual void queue(std::span<const float> samples) = 0;
    /// Frames that haven't left the queue yet.
    [[nodiscard]] virtual std::int64_t queued() const = 0;
    /// Frames that have left the queue and don't sound yet, about.
    [[nodiscard]] virtual std::int64_t delay() const = 0;
    /// Drops what is queued.
    virtual void clear() = 0;

    /// Lets the queue sound. With nothing in it there is silence.
    virtual void start() = 0;
    /// Keeps the queue as it is, in silence.
    virtual void stop() = 0;

    /// The device's name, for a person.
    [[nodiscard]] virtual std::string name() const = 0;
    /// Why nothing is to be heard and what to do about it, in sentences; empty when all is well.
    [[nodiscard]] virtual std::string note() const = 0;
    [[nodiscard]] bool silent() const { return !note().empty(); }
};

using OutputMaker = std::function<std::unique_ptr<Output>(SampleRate)>;

/// The system's sound device through SDL; a SilentOutput with the reason in its note when none can be opened.
/// Call it from the thread that started the program.
std::unique_ptr<Output> open_output(SampleRate rate);

} // namespace luft::desk
