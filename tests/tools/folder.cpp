#include "tools/folder.h"

#include <catch2/catch.hpp>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <system_error>

namespace luft::test {
namespace fs = std::filesystem;

namespace {

fs::path place() {
    const fs::path memory = "/dev/shm";
    return ::access(memory.c_str(), W_OK) == 0 ? memory : fs::temp_directory_path();
}

} // namespace

Folder::Folder() {
    std::string pattern = (place() / "luft-test-XXXXXX").string();
    INFO(pattern);
    REQUIRE(::mkdtemp(pattern.data()) != nullptr);
    path_ = pattern;
}

Folder::~Folder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
}

std::vector<std::string> Folder::names() const {
    std::vector<std::string> names;
    for (const auto& entry : fs::recursive_directory_iterator(path_))
        names.push_back(entry.path().lexically_relative(path_).string());
    std::sort(names.begin(), names.end());
    return names;
}

} // namespace luft::test
