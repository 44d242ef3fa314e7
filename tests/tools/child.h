// A program that a test starts, and may signal while it works.
#pragma once

#include "tools/folder.h"

#include <sys/types.h>

#include <chrono>
#include <optional>
#include <string>
#include <vector>

namespace luft::test {

struct Outcome {
    int status = 0; ///< exit status; 128 + signal when a signal ended it
    std::string out, err;
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
    /// Waits for its end.
    Outcome wait();
    /// Waits that long at most; none when it still runs.
    std::optional<Outcome> wait_for(std::chrono::milliseconds most);

  private:
    Outcome ended(int status);

    Folder folder_;
    pid_t pid_ = 0;
    bool running_ = false;
};

} // namespace luft::test
