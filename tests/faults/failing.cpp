#include "faults/failing.h"

#include "tools/files.h"

#include <csignal>
#include <cstdlib>
#include <sstream>

namespace luft::test {
namespace {

constexpr std::chrono::seconds kLongest{60};

/// The sanitizers insist on being loaded first, unless they are told that it is fine.
std::string sanitizer_options() {
    const char* now = std::getenv("ASAN_OPTIONS");
    return std::string("ASAN_OPTIONS=") + (now ? now + std::string(":") : "") + "verify_asan_link_order=0";
}

std::vector<std::string> lines(const std::string& text) {
    std::vector<std::string> all;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);)
        all.push_back(line);
    return all;
}

} // namespace

Tried try_failing(const std::string& program, const std::vector<std::string>& arguments,
                  const std::filesystem::path& folder, const Failing& failing) {
    const Folder outside;
    const std::filesystem::path log = outside / "calls";
    write_all(log, "");
    Child child(program, arguments,
                {"LD_PRELOAD=" LUFT_FAILING, sanitizer_options(), "FAILING_UNDER=" + folder.string(),
                 "FAILING_LOG=" + log.string(), "FAILING_AT=" + std::to_string(failing.at),
                 "FAILING_HOW=" + (failing.kill ? "kill" : std::to_string(failing.error)),
                 std::string("FAILING_ON=") + (failing.on ? "1" : "0"),
                 std::string("FAILING_HALF=") + (failing.half ? "1" : "0")});
    Tried tried;
    if (auto outcome = child.wait_for(kLongest)) {
        tried.outcome = std::move(*outcome);
    } else {
        tried.hung = true;
        child.signal(SIGKILL);
        tried.outcome = child.wait();
    }
    tried.calls = lines(read_all(log));
    return tried;
}

} // namespace luft::test
