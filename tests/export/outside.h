// Programs from outside the project that read what we write.
#pragma once

#include <catch2/catch.hpp>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>
#include <string>
#include <string_view>

namespace luft::exports::testing {

/// A file with this text, in a folder of its own that is gone at the end of the test.
class OutsideFile {
  public:
    OutsideFile(std::string_view name, std::string_view text) {
        std::string pattern = (std::filesystem::temp_directory_path() / "export-test-XXXXXX").string();
        REQUIRE(::mkdtemp(pattern.data()) != nullptr);
        folder_ = pattern;
        path_ = folder_ / name;
        std::ofstream(path_, std::ios::binary) << text;
    }
    OutsideFile(const OutsideFile&) = delete;
    OutsideFile& operator=(const OutsideFile&) = delete;
    ~OutsideFile() {
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    /// The file's name, quoted for a command line.
    [[nodiscard]] std::string name() const { return "'" + path_.string() + "'"; }

  private:
    std::filesystem::path folder_;
    std::filesystem::path path_;
};

/// What a command prints; fails the test when the command fails, so also when the program is missing.
inline std::string run(const std::string& command) {
    std::unique_ptr<FILE, int (*)(FILE*)> pipe(::popen(command.c_str(), "r"), ::pclose);
    REQUIRE(pipe);
    std::string said;
    char buffer[4096];
    while (const std::size_t n = std::fread(buffer, 1, sizeof buffer, pipe.get()))
        said.append(buffer, n);
    const int status = ::pclose(pipe.release());
    INFO(command << "\n" << said);
    REQUIRE(status == 0);
    return said;
}

} // namespace luft::exports::testing
