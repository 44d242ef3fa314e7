// What every verb runs in: where it prints, and how it is stopped.
#pragma once

#include "base/progress.h"
#include "cli/interrupt.h"
#include "cli/progress_line.h"

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace luft::cli {

/// The frame that a verb runs in. The command line is read first and chooses the work; the work runs after.
class Frame {
  public:
    /// Chooses the work; it runs once the whole command line has been read.
    void choose(std::function<void()> work) { work_ = std::move(work); }
    /// Signals only ask it to stop: none tears off a file that is just being written.
    void run();

    /// Prints to standard output. Throws Error(cannot_write) when it can't be written (a full disk, say).
    void print(std::string_view text);

    /// One line for a person about something beside the result; to standard error.
    void note(std::string_view line);

    /// The result of a verb: into the file `out`, whole or not at all, or to standard output when `out` is
    /// empty. Throws Error(bad_request) when `out` is one of `sources`, which are never written over, and
    /// Stopped when told to stop before.
    void deliver(std::string_view text, const std::string& out,
                 const std::vector<std::filesystem::path>& sources);

    /// For long work: shows how far it is, on a terminal only, and stops it at Ctrl+C.
    Progress progress();

  private:
    std::function<void()> work_;
    std::optional<Interrupt> interrupt_; ///< while the work runs
    std::optional<ProgressLine> line_;
};

} // namespace luft::cli
