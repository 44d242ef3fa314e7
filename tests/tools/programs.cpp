#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <array>
#include <cstdio>
#include <memory>

namespace luft::test {

std::string run(const std::string& command) {
    std::unique_ptr<FILE, int (*)(FILE*)> pipe(::popen(("exec 2>&1; " + command).c_str(), "r"), ::pclose);
    REQUIRE(pipe);
    std::string said;
    std::array<char, 4096> part{};
    while (const std::size_t n = std::fread(part.data(), 1, part.size(), pipe.get()))
        said.append(part.data(), n);
    const int status = ::pclose(pipe.release());
    INFO(command << "\n" << said);
    REQUIRE(status == 0);
    return said;
}

std::string quoted(const std::filesystem::path& file) {
    return "'" + file.string() + "'";
}

} // namespace luft::test
