// A place of a test's own for its files.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace luft::test {

/// A new folder, removed at the end: on the memory disk where there is one that may be written, since syncing
/// costs most of the time otherwise, else under the system's temporary folder. Fails the test when it can't
/// be made. All tests at once were seen to take 21 MB there.
class Folder {
  public:
    Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder();
    [[nodiscard]] std::filesystem::path operator/(const std::filesystem::path& name) const {
        return path_ / name;
    }
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }
    /// Names of everything in it, sorted, folders' contents included.
    [[nodiscard]] std::vector<std::string> names() const;

  private:
    std::filesystem::path path_;
};

} // namespace luft::test
