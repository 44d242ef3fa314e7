// A hostile file, given to the real program: what must come of it, whatever it holds.
#pragma once

#include "faults/row.h"
#include "tools/child.h"
#include "tools/folder.h"

#include <chrono>
#include <functional>
#include <string>
#include <vector>

namespace luft::test {

/// What one file may cost. Common practice, no source: a coach waits that long without a word, and any
/// machine has that much.
inline constexpr std::chrono::seconds kMostTime{20};
inline constexpr long kMostMegabytes = 500;

struct Case {
    std::string label; ///< what is wrong with it
    std::function<std::string()> bytes;
};

/// A row of hostile files.
class Trials {
  public:
    Trials(const std::string& fault, const std::string& how);

    /// Gives one file to `listen` and to `add`, under that name. Each must end in time, within its memory, by
    /// itself: refused in one line, with nothing left behind and the project as it was, or taken, with an
    /// analysis that is JSON.
    void give(const std::string& name, const std::string& label, const std::string& bytes);
    /// `brief` of the cases, evenly chosen, or all in the long version.
    void give_some(const std::string& name, const std::vector<Case>& cases, std::size_t brief);
    /// As `give`, of a file that is there and must be refused; `listen` only.
    void refuse(const std::string& file, const std::string& label);

    [[nodiscard]] Row& row() { return row_; }
    /// How many were refused and taken, and the most that one of them cost.
    [[nodiscard]] std::string figures() const;

  private:
    /// The program's status: 0 taken, 1 refused; anything else is a loss.
    int judge(const std::string& label, const std::vector<std::string>& arguments);

    Row row_;
    std::string empty_project_;
    int refused_ = 0, taken_ = 0;
    double slowest_ = 0;
    long largest_kb_ = 0;
    std::string slowest_label_, largest_label_;
};

} // namespace luft::test
