#include "tools/child.h"

#include "tools/files.h"

#include <catch2/catch.hpp>
#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <map>
#include <thread>

extern char** environ;

namespace luft::test {
namespace {

std::vector<char*> pointers(std::vector<std::string>& texts) {
    std::vector<char*> all;
    for (std::string& text : texts)
        all.push_back(text.data());
    all.push_back(nullptr);
    return all;
}

std::vector<std::string> environment_with(const std::vector<std::string>& more) {
    std::map<std::string, std::string> all;
    const auto put = [&](const std::string& line) { all[line.substr(0, line.find('='))] = line; };
    for (char** line = environ; *line; ++line)
        put(*line);
    for (const std::string& line : more)
        put(line);
    std::vector<std::string> lines;
    for (auto& [name, line] : all)
        lines.push_back(line);
    return lines;
}

} // namespace

Child::Child(const std::string& program, std::vector<std::string> arguments,
             const std::vector<std::string>& environment) {
    arguments.insert(arguments.begin(), program);
    std::vector<std::string> lines = environment_with(environment);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    const int flags = O_WRONLY | O_CREAT | O_TRUNC;
    posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, (folder_ / "out").c_str(), flags, 0600);
    posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, (folder_ / "err").c_str(), flags, 0600);
    // Whatever the tests were started by, the program takes signals as one that a person started.
    posix_spawnattr_t manner;
    posix_spawnattr_init(&manner);
    sigset_t usual;
    sigemptyset(&usual);
    for (const int one : {SIGINT, SIGTERM, SIGHUP})
        sigaddset(&usual, one);
    posix_spawnattr_setsigdefault(&manner, &usual);
    posix_spawnattr_setflags(&manner, POSIX_SPAWN_SETSIGDEF);
    const int fault = posix_spawnp(&pid_, program.c_str(), &actions, &manner, pointers(arguments).data(),
                                   pointers(lines).data());
    posix_spawnattr_destroy(&manner);
    posix_spawn_file_actions_destroy(&actions);
    INFO(program);
    REQUIRE(fault == 0);
    running_ = true;
}

Child::~Child() {
    if (!running_) return;
    ::kill(pid_, SIGKILL);
    ::waitpid(pid_, nullptr, 0);
}

void Child::signal(int which) const {
    ::kill(pid_, which);
}

void Child::limit(int resource, std::uint64_t most) const {
    const struct rlimit both { most, most };
    REQUIRE(::prlimit(pid_, static_cast<__rlimit_resource>(resource), &both, nullptr) == 0);
}

Outcome Child::wait() {
    int status = 0;
    struct rusage used {};
    REQUIRE(::wait4(pid_, &status, 0, &used) == pid_);
    return ended(status, used);
}

std::optional<Outcome> Child::wait_for(std::chrono::milliseconds most) {
    const auto until = std::chrono::steady_clock::now() + most;
    struct rusage used {};
    for (int status = 0;;) {
        if (::wait4(pid_, &status, WNOHANG, &used) == pid_) return ended(status, used);
        if (std::chrono::steady_clock::now() >= until) return std::nullopt;
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
}

Outcome Child::ended(int status, const struct rusage& used) {
    running_ = false;
    const auto seconds = [](const timeval& t) {
        return static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_usec) / 1e6;
    };
    return {WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status), read_all(folder_ / "out"),
            read_all(folder_ / "err"), used.ru_maxrss, seconds(used.ru_utime) + seconds(used.ru_stime)};
}

} // namespace luft::test
