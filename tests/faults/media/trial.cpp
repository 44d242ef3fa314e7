#include "trial.h"

#include "tools/files.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sys/resource.h>

#include <algorithm>
#include <filesystem>
#include <sstream>

namespace luft::test {
namespace {

/// Above the address space that a program of these libraries takes for nothing, and what is allowed.
constexpr std::uint64_t kAddressSpace = std::uint64_t{4} << 30;

std::string program_says(const std::vector<std::string>& arguments) {
    const Outcome outcome = Child(LUFT_PROGRAM, arguments).wait();
    INFO(outcome.err);
    REQUIRE(outcome.status == 0);
    return outcome.out;
}

bool one_clear_line(const std::string& err) {
    return err.starts_with("luftpause: ") && err.ends_with(".\n") && err.size() > 25 && err.size() < 600 &&
           std::ranges::count(err, '\n') == 1;
}

} // namespace

Trials::Trials(const std::string& fault, const std::string& how)
    : row_("hostile input", fault,
           how + "; `listen`, and `add` where there is a file, each within " +
               std::to_string(kMostTime.count()) + " s and " + std::to_string(kMostMegabytes) +
               " MB, ended by itself, one line or an analysis") {
    const Folder folder;
    program_says({"new", folder / "a.luft", "--title", "Three lines"});
    empty_project_ = read_all(folder / "a.luft");
}

int Trials::judge(const std::string& label, const std::vector<std::string>& arguments) {
    row_.run();
    const auto start = std::chrono::steady_clock::now();
    Child child(LUFT_PROGRAM, arguments);
    child.limit(RLIMIT_AS, kAddressSpace);
    child.limit(RLIMIT_CPU, static_cast<std::uint64_t>(kMostTime.count()));
    // Others may use the machine, too: only the processor's time is held to the second.
    const auto outcome = child.wait_for(6 * kMostTime);
    if (!outcome) {
        row_.lost(label + ": still running after " + std::to_string(6 * kMostTime.count()) + " s");
        return -1;
    }
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    if (outcome->cpu_seconds > slowest_) {
        slowest_ = outcome->cpu_seconds;
        slowest_label_ = label;
    }
    if (outcome->peak_kb > largest_kb_) {
        largest_kb_ = outcome->peak_kb;
        largest_label_ = label;
    }
    INFO(label << " (" << arguments.front() << ", " << took.count() << " s): " << outcome->err);
    const bool fine = outcome->status == 0 || outcome->status == 1;
    row_.must(fine, label + ": ended with status " + std::to_string(outcome->status));
    row_.must(outcome->peak_kb < kMostMegabytes * 1024,
              label + ": took " + std::to_string(outcome->peak_kb / 1024) + " MB");
    if (outcome->status == 1) row_.must(one_clear_line(outcome->err), label + ": not one clear line");
    if (outcome->status == 0) row_.must(outcome->err.empty(), label + ": taken, but with complaints");
    return fine ? outcome->status : -1;
}

void Trials::give(const std::string& name, const std::string& label, const std::string& bytes) {
    const Folder folder;
    write_all(folder / name, bytes);
    write_all(folder / "a.luft", empty_project_);
    const auto before = folder.names();
    const int listened = judge(label, {"listen", folder / name, "--out", folder / "out.json"});
    if (listened == 0) {
        ++taken_;
        row_.must(nlohmann::json::accept(read_all(folder / "out.json")), label + ": no JSON");
        std::filesystem::remove(folder / "out.json");
    } else {
        ++refused_;
    }
    row_.must(folder.names() == before, label + ": something was left behind");

    const int added = judge(label, {"add", folder / "a.luft", folder / name, "--no-listen"});
    if (added == 1) row_.must(read_all(folder / "a.luft") == empty_project_, label + ": project was changed");
    row_.must(folder.names() == before, label + ": something was left behind");
}

void Trials::give_some(const std::string& name, const std::vector<Case>& cases, std::size_t brief) {
    const std::size_t count = long_runs() ? cases.size() : std::min(brief, cases.size());
    for (std::size_t i = 0; i < count; ++i) {
        // From the middle of each of `count` stretches.
        const Case& one = cases[(2 * i + 1) * cases.size() / (2 * count)];
        give(name, one.label, one.bytes());
    }
}

void Trials::refuse(const std::string& file, const std::string& label) {
    const int status = judge(label, {"listen", file});
    row_.must(status == 1, label + ": not refused");
    ++refused_;
}

std::string Trials::figures() const {
    std::ostringstream text;
    text << refused_ << " refused, " << taken_ << " taken; most: " << slowest_ << " s (" << slowest_label_
         << "), " << largest_kb_ / 1024 << " MB (" << largest_label_ << ")";
    return text.str();
}

} // namespace luft::test
