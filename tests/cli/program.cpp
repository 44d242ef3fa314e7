#include "cli/program.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <csignal>
#include <sstream>
#include <thread>

using namespace luft::test;

namespace luft::cli::test {

Outcome run(const std::string& program, const std::vector<std::string>& arguments) {
    return Child(program, arguments).wait();
}

Outcome luftpause(const std::vector<std::string>& arguments) {
    return run(LUFT_PROGRAM, arguments);
}

std::string done(const std::vector<std::string>& arguments) {
    const Outcome outcome = luftpause(arguments);
    std::string line;
    for (const std::string& argument : arguments)
        line += " " + argument;
    INFO("luftpause" << line << "\n" << outcome.err);
    REQUIRE(outcome.status == 0);
    CHECK(outcome.err.empty());
    return outcome.out;
}

Outcome interrupted(const std::vector<std::string>& arguments, int milliseconds) {
    Child child(LUFT_PROGRAM, arguments);
    std::this_thread::sleep_for(std::chrono::milliseconds(milliseconds));
    child.signal(SIGINT);
    return child.wait();
}

std::vector<std::string> lines(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> all;
    for (std::string line; std::getline(in, line);)
        if (!line.empty()) all.push_back(line);
    return all;
}

std::string after(const std::string& text, const std::string& words) {
    INFO("'" << words << "' in: " << text);
    const std::size_t at = text.find(words);
    REQUIRE(at != std::string::npos);
    const std::size_t from = at + words.size();
    const std::size_t to = text.find_first_not_of("0123456789.:", from);
    REQUIRE(to != from);
    return text.substr(from, to - from);
}

} // namespace luft::cli::test
