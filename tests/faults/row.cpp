#include "faults/row.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <exception>
#include <filesystem>
#include <fstream>

namespace luft::test {
namespace {

/// How to run the test that is running.
std::string command() {
    std::string program = std::filesystem::read_symlink("/proc/self/exe").filename();
    // As the system says of a program that was built anew meanwhile.
    if (const std::size_t gone = program.find(" (deleted)"); gone != program.npos) program.erase(gone);
    return (long_runs() ? "LUFT_LONG=1 build/bin/" : "build/bin/") + program + " \"" +
           Catch::getResultCapture().getCurrentTestName() + "\"";
}

} // namespace

bool long_runs() {
    return std::getenv("LUFT_LONG") != nullptr;
}

int runs(int brief, int long_) {
    return long_runs() ? long_ : brief;
}

Row::Row(std::string group, std::string fault, std::string how)
    : group_(std::move(group)), fault_(std::move(fault)), how_(std::move(how)),
      exceptions_(std::uncaught_exceptions()) {}

Row::~Row() {
    if (std::uncaught_exceptions() > exceptions_) ++losses_;
    if (const char* file = std::getenv("LUFT_FAULT_ROWS"))
        std::ofstream(file, std::ios::app) << group_ << '\t' << fault_ << '\t' << how_ << '\t' << runs_
                                           << '\t' << losses_ << '\t' << command() << '\n';
}

void Row::lost(const std::string& what) {
    ++losses_;
    FAIL_CHECK(what);
}

} // namespace luft::test
