// What the command line's tests share: the built program, and what it says.
#pragma once

#include "tools/child.h"

#include <string>
#include <vector>

namespace luft::cli::test {

using luft::test::Child;
using luft::test::Outcome;

/// Runs a program of PATH, or of a path, with these arguments and without a terminal.
Outcome run(const std::string& program, const std::vector<std::string>& arguments);

/// Runs `luftpause`.
Outcome luftpause(const std::vector<std::string>& arguments);

/// Runs `luftpause`, which must succeed and say nothing on standard error; what it printed.
std::string done(const std::vector<std::string>& arguments);

/// Starts `luftpause`, sends it SIGINT once `milliseconds` have gone, and waits for its end.
Outcome interrupted(const std::vector<std::string>& arguments, int milliseconds);

/// Non-empty lines.
std::vector<std::string> lines(const std::string& text);

/// The number right after `words` in a text; fails the test when it isn't there.
std::string after(const std::string& text, const std::string& words);

} // namespace luft::cli::test
