// Programs from outside the project, which make what we read and read what we write.
#pragma once

#include <filesystem>
#include <string>

namespace luft::test {

/// Runs a command line of the shell; what it printed, errors included. Fails the test when the command fails,
/// so also when the program is missing.
std::string run(const std::string& command);

/// A file's name for a command line; none with a ' in it.
std::string quoted(const std::filesystem::path& file);

} // namespace luft::test
