#include "base/new_mode.h"

#include <sys/stat.h>

#include <cstdlib>
#include <fstream>
#include <string>

namespace luft {
namespace {

constexpr mode_t kEverybody = 0666;

/// proc(5): "Umask: 0022" in a process's status, since Linux 4.7; by setting it where there is no such line.
mode_t mask_of_user() {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with("Umask:"))
            return static_cast<mode_t>(std::strtoul(line.c_str() + line.find(':') + 1, nullptr, 8));
    const mode_t mask = ::umask(0077);
    ::umask(mask);
    return mask;
}

} // namespace

mode_t mode_of_new_files() {
    return kEverybody & ~mask_of_user();
}

} // namespace luft
