// A row of docs/reliability.md: one kind of fault, injected many times, and what was lost by it.
#pragma once

#include <string>

namespace luft::test {

/// True when the long version is wanted (tests/faults/run --long); ctest runs the short one.
bool long_runs();

/// How often to inject: `brief` times in ctest, `long_` times in the long version.
int runs(int brief, int long_);

/// Lives as long as the test that fills it. At the end it goes, with the test's command, into the file that
/// LUFT_FAULT_ROWS names, if any. A test that ends by an exception, a failed REQUIRE included, counts as a
/// loss.
class Row {
  public:
    /// group  heading of the table: kill, disk, two programs, rot, hostile input, load, stop, sanitizers,
    /// release,
    ///        privacy (page.py has the list)
    /// fault  what goes wrong, in words for a coach; names the row
    /// how    how it is injected, in a line
    Row(std::string group, std::string fault, std::string how);
    Row(const Row&) = delete;
    Row& operator=(const Row&) = delete;
    ~Row();

    void run() { ++runs_; } ///< one more injection
    void runs(int more) { runs_ += more; }
    /// Something was lost, or went otherwise than it must: counted, and the test fails with these words.
    void lost(const std::string& what);
    /// lost(what) unless it holds.
    void must(bool holds, const std::string& what) {
        if (!holds) lost(what);
    }

  private:
    std::string group_, fault_, how_;
    int runs_ = 0, losses_ = 0, exceptions_ = 0;
};

} // namespace luft::test
