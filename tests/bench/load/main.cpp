// luft-bench-load: makes what load is measured on, and measures what the window does with it.
#include "base/error.h"
#include "bench/load/material.h"
#include "bench/load/window_work.h"

#include <cstdio>
#include <exception>
#include <filesystem>
#include <string>
#include <vector>

namespace {

using luft::Seconds;
using luft::load::Size;

int usage() {
    std::fputs("luft-bench-load sing FILE SECONDS | make FOLDER | window PROJECT\n", stderr);
    return 2;
}

/// Two projects: one performance of eight hours, and fifty of ten minutes; 100,000 marks and 10,000 moments
/// each.
void make(const std::filesystem::path& folder) {
    std::filesystem::create_directories(folder);
    const Size day{.length = Seconds(8 * 3600), .marks = 100'000, .moments = 9'700, .stops = 500};
    luft::load::make_project(folder / "long.luft", {day}, 400);
    std::vector<Size> many;
    for (std::uint64_t i = 1; i <= 50; ++i)
        many.push_back({.length = Seconds(600), .marks = 2'000, .moments = 195, .stops = 20, .seed = i});
    luft::load::make_project(folder / "many.luft", many, 100);
}

} // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv + 1, argv + argc);
    try {
        if (words.size() == 3 && words[0] == "sing")
            luft::load::sing(words[1], Seconds(std::stod(words[2])));
        else if (words.size() == 2 && words[0] == "make")
            make(words[1]);
        else if (words.size() == 2 && words[0] == "window")
            luft::load::measure_window(words[1]);
        else
            return usage();
    } catch (const std::exception& error) {
        std::fprintf(stderr, "luft-bench-load: %s\n", error.what());
        return 1;
    }
    return 0;
}
