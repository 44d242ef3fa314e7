// Whole files, byte for byte, without the code under test.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace luft::test {

/// All bytes of a file; fails the test when it can't be opened.
std::string read_all(const std::filesystem::path& file);

/// Makes or overwrites a file; fails the test when it can't.
void write_all(const std::filesystem::path& file, std::string_view bytes);

} // namespace luft::test
