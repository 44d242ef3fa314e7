// Files and programs outside the benchmark.
#pragma once

#include "base/units.h"

#include <filesystem>
#include <string>
#include <vector>

namespace luft::bench {

/// A new folder under the system's temporary folder, removed at the end. Throws Error(cannot_write).
class Place {
  public:
    Place();
    Place(const Place&) = delete;
    Place& operator=(const Place&) = delete;
    ~Place();
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

  private:
    std::filesystem::path path_;
};

/// Runs a command line of the shell. Throws Error(not_found) with what it printed when it fails.
void run(const std::string& command);

struct Sound {
    std::vector<float> samples; ///< interleaved
    int channels = 1;
    SampleRate rate;
};

/// A whole file's sound, through core/media.
Sound read_sound(const std::filesystem::path& file);

} // namespace luft::bench
