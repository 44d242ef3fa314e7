// Whether what a disturbed program has left behind is whole: every edit of it there, or not at all.
#pragma once

#include "faults/failing.h"
#include "faults/row.h"
#include "work.h"

#include <chrono>
#include <map>
#include <set>

namespace faults {

/// The same work, undisturbed: what it comes to, and the states that it goes through.
class Undisturbed {
  public:
    explicit Undisturbed(Work work);

    [[nodiscard]] const Work& work() const { return work_; }
    [[nodiscard]] const fs::path& furnished() const { return furnished_.path(); }
    [[nodiscard]] const std::vector<std::string>& calls() const { return calls_; }

    /// Does it in a folder of its own, disturbed, and judges: counts a run, and what isn't as it must be.
    void disturb(const Failing& failing, Row& row) const;
    /// Likewise, killed at an instant of the time that it takes, `share` of it; counts no run when it was
    /// done by then.
    void kill_at(double share, Row& row) const;

  private:
    void judge_left(const Room& room, bool said_done, Row& row) const;
    void judge_outcome(const Tried& tried, const Failing& failing, Row& row) const;
    void judge_files(const fs::path& folder, Row& row) const;
    /// How many of the work's edits are in the project.
    [[nodiscard]] std::size_t judge_project(const fs::path& file, Row& row) const;
    [[nodiscard]] bool judge_made(const fs::path& file, Row& row) const;
    void judge_again(const fs::path& folder, bool begun, bool finished, Row& row) const;

    Work work_;
    Folder furnished_, finished_;
    std::vector<std::string> calls_;
    std::chrono::duration<double> lasts_{};
    std::set<std::string> names_before_;
    std::vector<std::string> states_; ///< of the project after 0, 1, 2 … of the edits
    std::string end_;                 ///< of the project or what is made, derived tables included
};

/// Done once a program.
const Undisturbed& undisturbed(const Work& work);

} // namespace faults
