// Ctrl+C as a stop token: long work ends between two steps and leaves nothing half done.
#pragma once

#include <stop_token>
#include <thread>

namespace luft::cli {

/// While it lives, the first SIGINT, SIGTERM or SIGHUP (the terminal was closed) asks the work to stop; a
/// second one ends the program at once. One that was ignored when the program began stays ignored. Threads
/// made later inherit that they don't take the signals themselves. After it they are taken no more: what was
/// done by then is done, and the program says so. One at a time.
class Interrupt {
  public:
    Interrupt();
    Interrupt(const Interrupt&) = delete;
    Interrupt& operator=(const Interrupt&) = delete;
    ~Interrupt();

    [[nodiscard]] std::stop_token stop_token() const { return stop_.get_token(); }

  private:
    std::stop_source stop_;
    std::jthread waiter_;
};

/// Exit status of a program that Ctrl+C ended: 128 + SIGINT, as shells report it.
inline constexpr int kStoppedStatus = 130;

} // namespace luft::cli
