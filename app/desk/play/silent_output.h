// An output without a device: time goes on, so that the picture does.
#pragma once

#include "desk/play/output.h"

#include <chrono>
#include <mutex>

namespace luft::desk {

/// The queue empties by the steady clock, at its rate.
class SilentOutput final : public Output {
  public:
    /// `reason` is a whole sentence: why there is no device.
    SilentOutput(SampleRate rate, std::string reason) : rate_(rate), reason_(std::move(reason)) {}

    [[nodiscard]] SampleRate rate() const override { return rate_; }
    void queue(std::span<const float> samples) override;
    [[nodiscard]] std::int64_t queued() const override;
    [[nodiscard]] std::int64_t delay() const override { return 0; }
    void clear() override;
    void start() override;
    void stop() override;
    [[nodiscard]] std::string name() const override { return "no sound device"; }
    [[nodiscard]] std::string note() const override;

  private:
    using Clock = std::chrono::steady_clock;
    void let_go() const;

    SampleRate rate_;
    std::string reason_;
    mutable std::mutex lock_;
    mutable double left_ = 0;        ///< frames in the queue at the time `at_`
    mutable Clock::time_point at_{}; ///< likewise
    bool running_ = false;
};

} // namespace luft::desk
