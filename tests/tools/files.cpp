#include "tools/files.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>

namespace luft::test {

std::string read_all(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    INFO(file);
    REQUIRE(in.is_open());
    return {std::istreambuf_iterator<char>(in), {}};
}

void write_all(const std::filesystem::path& file, std::string_view bytes) {
    std::ofstream out(file, std::ios::binary);
    out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    out.close();
    INFO(file);
    REQUIRE(out.good());
}

} // namespace luft::test
