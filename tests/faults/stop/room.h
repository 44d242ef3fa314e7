// A project with everything that long work of the command line needs, and places to do that work in.
#pragma once

#include "base/units.h"
#include "tools/child.h"
#include "tools/folder.h"

#include <map>
#include <string>
#include <vector>

namespace luft::stop {

/// One piece of long work.
struct Work {
    std::string what;                   ///< "adding a recording"
    std::vector<std::string> arguments; ///< of luftpause; "@NAME" is a file of the place
    /// Where it writes: a file, which isn't there unless it is whole, or a folder of such files; else empty.
    std::string makes = {};
};

/// Every piece of long work that the command line knows.
const std::vector<Work>& works();

/// A folder with the project song.luft of two performances that were listened to, A linked (with moving
/// pictures) and B carried, moments and a script; and recordings beside it. Long runs have longer recordings.
class Room {
  public:
    Room();
    [[nodiscard]] const test::Folder& folder() const { return folder_; }

  private:
    test::Folder folder_;
};

/// Made once for all tests of this program.
const Room& room();

/// How long work took to end after it was told to; said on standard output at the end.
class Waits {
  public:
    explicit Waits(std::string what) : what_(std::move(what)) {}
    Waits(const Waits&) = delete;
    Waits& operator=(const Waits&) = delete;
    ~Waits();
    void add(Seconds waited) { waits_.push_back(waited); }

  private:
    std::string what_;
    std::vector<Seconds> waits_;
};

/// A copy of the room for one piece of work: to be begun, stopped, looked at, and done.
class Place {
  public:
    Place(const Room& room, Work work);

    [[nodiscard]] std::filesystem::path operator/(const std::string& name) const { return folder_ / name; }
    /// Begins the work.
    [[nodiscard]] test::Child begin() const;
    /// What is wrong after stopped work: the project isn't as it was or not sound, there are files that
    /// weren't there, or one that isn't whole under its final name. Empty when nothing is.
    [[nodiscard]] std::string damage() const;
    /// Files that were made and are nobody's result: unfinished ones.
    [[nodiscard]] std::vector<std::string> left_behind() const;
    /// Everything as it was before.
    void restore();

    /// From now on, what the work has made is taken as what it makes when nobody stops it.
    void take_as_whole() { whole_ = made(); }

  private:
    using Sizes = std::map<std::string, std::uintmax_t>;
    /// Files that weren't there before, with their sizes in bytes.
    [[nodiscard]] Sizes made() const;
    [[nodiscard]] bool is_result(const std::string& name) const;

    const Room& room_;
    Work work_;
    test::Folder folder_;
    std::vector<std::string> before_; ///< names
    std::string contents_;            ///< the project's, as a hash
    Sizes whole_;
};

} // namespace luft::stop
