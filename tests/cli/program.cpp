#include "cli/program.h"

#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>
#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <sstream>
#include <thread>

extern char** environ;

using namespace luft::test;

namespace luft::cli::test {
namespace {

/// Started with its output going into two files, so that neither pipe can fill up.
class Child {
  public:
    Child(const std::string& program, std::vector<std::string> arguments) {
        arguments.insert(arguments.begin(), program);
        std::vector<char*> argv;
        for (std::string& argument : arguments)
            argv.push_back(argument.data());
        argv.push_back(nullptr);
        posix_spawn_file_actions_t actions;
        posix_spawn_file_actions_init(&actions);
        posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
        const int flags = O_WRONLY | O_CREAT | O_TRUNC;
        posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, (folder_ / "out").c_str(), flags, 0600);
        posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, (folder_ / "err").c_str(), flags, 0600);
        const int fault = posix_spawnp(&pid_, program.c_str(), &actions, nullptr, argv.data(), environ);
        posix_spawn_file_actions_destroy(&actions);
        INFO(program);
        REQUIRE(fault == 0);
    }

    void signal(int which) const { ::kill(pid_, which); }

    Outcome wait() {
        int status = 0;
        REQUIRE(::waitpid(pid_, &status, 0) == pid_);
        return {WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status), read_all(folder_ / "out"),
                read_all(folder_ / "err")};
    }

  private:
    Folder folder_;
    pid_t pid_ = 0;
};

} // namespace

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
