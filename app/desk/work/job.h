// Long work in the background, so that the window stays usable: listening, comparing, and writing
// files.
#pragma once

#include "desk/work/match.h"
#include "files/write_all.h"
#include "intake/intake.h"

#include <atomic>
#include <chrono>
#include <deque>
#include <filesystem>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <set>
#include <string>
#include <thread>
#include <variant>
#include <vector>

namespace luft::desk {

/// One piece of long work on a project, in a thread and over a connection of its own. Looked at from the
/// window's thread.
class Job {
  public:
    /// What is to be done: a recording to add, a performance to listen to again, files to write, or
    /// two performances to compare.
    struct Again {
        project::PerformanceId performance;
        marks::Accompaniment accompaniment = marks::Accompaniment::find_out;
    };
    struct Files {
        project::PerformanceId performance;
        std::filesystem::path folder;
        std::set<std::string, std::less<>> formats; ///< their keys
    };
    struct Match {
        project::PerformanceId a, b;
        std::shared_ptr<const Matched> before = {}; ///< see match
    };
    using Task = std::variant<intake::Recording, Again, Files, Match>;

    /// How it stands.
    struct State {
        double done = 0;             ///< 0 to 1
        std::string doing;           ///< what is being done
        std::optional<Seconds> left; ///< estimated from what has been done; none in the first seconds
        bool finished = false;
    };
    /// How it came out: the performance, the files or the comparison, nothing when it was stopped, or what
    /// went wrong.
    struct Outcome {
        std::optional<intake::Added> added;
        std::optional<files::Written> written;
        std::shared_ptr<const Matched> matched;
        std::optional<Error> fault;
    };

    /// Begins at once.
    Job(std::filesystem::path project, Task task);
    /// Stops and waits.
    ~Job();
    Job(const Job&) = delete;
    Job& operator=(const Job&) = delete;

    [[nodiscard]] bool writes_files() const { return std::holds_alternative<Files>(task_); }
    /// Which two it compares; null when it does something else.
    [[nodiscard]] const Match* comparison() const { return std::get_if<Match>(&task_); }
    void stop() { thread_.request_stop(); }
    [[nodiscard]] State state() const;
    /// Once `finished`.
    [[nodiscard]] const Outcome& outcome() const { return outcome_; }

  private:
    void work(const std::stop_token& stop);
    void listen(const Progress& progress);
    void write(const Files& wanted, const Progress& progress);

    std::filesystem::path project_;
    Task task_;
    std::chrono::steady_clock::time_point began_;
    mutable std::mutex lock_;
    double done_ = 0;
    std::string doing_;
    std::atomic<bool> finished_ = false;
    Outcome outcome_; ///< written before finished_, read after
    std::jthread thread_;
};

inline bool is_comparison(const Job::Task& task) {
    return std::holds_alternative<Job::Match>(task);
}
/// Takes the comparisons out of what waits: they are only looked at, so that nothing is lost by it. Returns
/// them.
std::vector<Job::Match> drop_comparisons(std::deque<Job::Task>& waiting);

} // namespace luft::desk
