// A project far larger than a coach's: nothing of it gets lost, and memory stays within bounds.
#include "bench/load/material.h"
#include "desk/work/session.h"
#include "faults/row.h"
#include "files/write_all.h"
#include "profile/profile.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <map>

using namespace luft;
using namespace luft::test;

namespace {

/// Of this process, in MB (10^6 bytes).
double peak_megabytes() {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with("VmHWM:")) return std::strtod(line.c_str() + 6, nullptr) * 1024 / 1e6;
    FAIL("The system doesn't tell a process's peak memory.");
    return 0;
}

/// Marks and moments of a performance, each with its state, by their numbers.
using Held = std::map<std::pair<char, std::int64_t>, project::MarkState>;

Held held(const project::Project& project, project::PerformanceId id) {
    Held all;
    for (const auto& mark : project.marks(id, true))
        all[{'m', mark.id.value}] = mark.state;
    for (const auto& moment : project.moments(id, true))
        all[{'M', moment.id.value}] = moment.state;
    return all;
}

/// Every text format: what is drawn takes its time, and is bounded by pages.
bool is_text(const files::Format& format) {
    return std::holds_alternative<files::AsText>(format.make);
}

/// Keeps a mark and a moment, drops another mark, and takes the dropping back.
void edit(desk::Session& session, Held& expected) {
    const auto& source = session.source();
    const auto mark = source.marks[source.marks.size() / 2].id, other = source.marks.front().id;
    const auto moment = source.moments.back().id;
    session.edit([&](project::Project& p) { p.set_mark_state(mark, project::MarkState::kept); });
    session.edit([&](project::Project& p) { p.set_moment_state(moment, project::MarkState::kept); });
    session.edit([&](project::Project& p) { p.set_mark_state(other, project::MarkState::dropped); });
    session.undo();
    expected[{'m', mark.value}] = project::MarkState::kept;
    expected[{'M', moment.value}] = project::MarkState::kept;
}

} // namespace

TEST_CASE(
    "A project of many long performances is opened, edited, summed up and exported without losing a mark") {
    const auto performances = static_cast<std::size_t>(test::runs(10, 50));
    const int marks = test::runs(500, 2000), moments = test::runs(40, 200);
    // The curves of fifty performances of ten minutes take 170 MB, and 100,000 marks another 100: what held
    // all of them at once would not fit.
    const double most_megabytes = 100;
    Row row("load", "a project with many performances and thousands of marks",
            std::to_string(performances) + " performances of " + std::to_string(marks) + " marks and " +
                std::to_string(moments) +
                " moments made; each shown, edited, undone, summed up and "
                "exported; peak memory under " +
                std::to_string(static_cast<int>(most_megabytes)) + " MB");
    const Folder folder;
    std::vector<load::Size> sizes(performances,
                                  {.length = Seconds(600), .marks = marks, .moments = moments, .stops = 10});
    for (std::size_t i = 0; i < sizes.size(); ++i)
        sizes[i].seed = i + 1;
    std::vector<Held> expected;
    {
        const auto made = load::make_project(folder / "big.luft", sizes, 20);
        for (const auto& performance : made.performances())
            expected.push_back(held(made, performance.id));
    }
    desk::Session session;
    session.open(folder / "big.luft");
    REQUIRE(session.performances().size() == performances);
    for (std::size_t i = 0; i < performances; ++i) {
        row.run();
        const auto performance = session.performances()[i];
        row.must(expected[i].size() >= static_cast<std::size_t>(marks + moments) * 9 / 10,
                 "performance " + performance.label + " wasn't stored whole");
        session.show(performance.id);
        edit(session, expected[i]);
        const auto profile = profile::make_profile(session.source());
        row.must(profile.notes > 0, "no profile of " + performance.label);
        const auto written = files::write_all(session.project(), {performance}, folder / "out", {}, is_text);
        row.must(written.faults.empty(), written.missing());
        std::filesystem::remove_all(folder / "out");
    }
    session.close();
    const auto again = project::Project::open(folder / "big.luft");
    row.must(again.check().empty(), "the check finds damage");
    for (std::size_t i = 0; i < performances; ++i)
        row.must(held(again, again.performances()[i].id) == expected[i],
                 "marks or moments of performance " + std::to_string(i + 1) + " are lost or changed");
    const double peak = peak_megabytes();
    INFO("peak memory " << peak << " MB");
    row.must(peak < most_megabytes, "more memory than promised");
}
