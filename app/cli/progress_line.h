// How far long work is, as one line on the terminal.
#pragma once

#include <chrono>
#include <string_view>

namespace luft::cli {

/// Shows on standard error, and only where that is a terminal; the line is gone when this is.
class ProgressLine {
  public:
    ProgressLine();
    ProgressLine(const ProgressLine&) = delete;
    ProgressLine& operator=(const ProgressLine&) = delete;
    ~ProgressLine();

    /// `done` from 0 to 1.
    void show(double done, std::string_view doing);
    /// Takes the line off the terminal until it is shown again.
    void clear();

  private:
    bool on_terminal_;
    bool shown_ = false;
    std::chrono::steady_clock::time_point next_;
};

} // namespace luft::cli
