#include "bench/report.h"

#include "base/write_file.h"

#include <cstdio>
#include <fstream>
#include <thread>

namespace luft::bench {
namespace {

std::string processor() {
    std::ifstream in("/proc/cpuinfo");
    for (std::string line; std::getline(in, line);)
        if (line.starts_with("model name")) return line.substr(line.find(':') + 2);
    return "an unknown processor";
}

} // namespace

void print(const std::vector<Table>& tables) {
    for (const Table& t : tables)
        std::fputs(t.text().c_str(), stdout);
}

void write_page(const std::filesystem::path& folder, const Work& work, const std::vector<Table>& tables) {
    std::string page = "# The ear, measured\n\nWritten by `tests/bench/run`; [README.md](README.md) says how "
                       "it is made. Not to be "
                       "edited by hand.\n\nMeasured on " +
                       processor() + ", " + std::to_string(std::thread::hardware_concurrency()) +
                       " cores.\n\n";
    for (const Table& t : tables)
        page += t.markdown();
    Table what{"What was listened to", "", {"group", "scenes", "seeds", "what"}, {}};
    what.words = {0, 3};
    for (const Seeded& s : work.groups)
        what.rows.push_back({s.group.name, std::to_string(s.last - s.first + 1),
                             std::to_string(s.first) + "–" + std::to_string(s.last), s.group.what});
    page += what.markdown();
    page.pop_back(); // one line end at the end
    std::filesystem::create_directories(folder);
    write_file(folder / "ear.md", page);
}

} // namespace luft::bench
