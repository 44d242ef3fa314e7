// A program that a test starts, and may signal while it works.
#pragma once

#include "tools/folder.h"

#include <sys/resource.h>
#include <sys/types.h>

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace luft::test {

struct Outcome {
    int status = 0; ///< exit status; 128 + signal when a signal ended it
    std::string out, err;
    long peak_kb = 0;       ///< most memory that was resident; never less than the test's own (getrusage(2))
    double cpu_seconds = 0; ///< spent by the program and by the system for it
};

/// A program of PATH, or of a path, without a terminal. Its output goes into two files, so that neither pipe
/// can fill up. What is still running when this goes away is killed.
class Child {
  public:
    /// `environment`: "NAME=value" beside what the test itself has, or instead of it.
    Child(const std::string& program, std::vector<std::string> arguments,
          const std::vector<std::string>& environment = {});
    Child(const Child&) = delete;
    Child& operator=(const Child&) = delete;
    ~Child();

    [[nodiscard]] pid_t pid() const { return pid_; }
    void signal(int which) const;
    /// Sets a limit of setrlimit(2), such as RLIMIT_AS, from now on.
    void limit(int resource, std::uint64_t most) const;
    /// Waits for its end.
    Outcome wait();
    /// Waits that long at most; none when it still runs.
    std::optional<Outcome> wait_for(std::chrono::milliseconds most);

  private:
    Outcome ended(int status, const struct rusage& used);

    Folder folder_;
    pid_t pid_ = 0;
    bool running_ = false;
};

} // namespace luft::test
