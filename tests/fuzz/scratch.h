// A folder for what a target writes, on the memory disk where there is one; gone at the end of the program.
#pragma once

#include "fuzz/target.h"

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace luft::fuzz {

class Scratch {
  public:
    Scratch() {
        const bool memory = ::access("/dev/shm", W_OK) == 0;
        std::string name =
            (memory ? "/dev/shm" : std::filesystem::temp_directory_path().string()) + "/luft-fuzz-XXXXXX";
        demand(::mkdtemp(name.data()) != nullptr, "a folder can be made");
        path_ = name;
    }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;
    ~Scratch() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }

    std::filesystem::path operator/(const char* name) const { return path_ / name; }
    void clear() const {
        for (const auto& entry : std::filesystem::directory_iterator(path_))
            std::filesystem::remove_all(entry.path());
    }

  private:
    std::filesystem::path path_;
};

inline void write_bytes(const std::filesystem::path& file, std::string_view bytes) {
    std::ofstream(file, std::ios::binary).write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

} // namespace luft::fuzz
