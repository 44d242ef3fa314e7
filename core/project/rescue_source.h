// What a rescue reads: the damaged file itself, or, when an edit of it was cut off, a copy where that is
// rolled back.
#pragma once

#include <filesystem>

namespace luft::project {

/// The damaged file is only ever read.
class RescueSource {
  public:
    /// Makes the copy, when there has to be one, in a folder of its own beside `fresh`. Throws
    /// Error(cannot_write) when it can't be made, Error(busy) while another program writes.
    RescueSource(const std::filesystem::path& damaged, const std::filesystem::path& fresh);
    RescueSource(const RescueSource&) = delete;
    RescueSource& operator=(const RescueSource&) = delete;
    ~RescueSource(); ///< removes the copy

    [[nodiscard]] const std::filesystem::path& file() const { return file_; }

  private:
    std::filesystem::path folder_, file_;
};

} // namespace luft::project
