// luft-bench: how well the ear hears, in figures.
#include "base/error.h"
#include "bench/run.h"

#include <CLI/CLI.hpp>

#include <cstdio>
#include <thread>

using namespace luft;

namespace {

struct Options {
    bool quick = false, per_scene = false;
    std::vector<std::string> groups;
    std::string seeds = "2000-2007", write, recordings;
    int jobs = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
};

void set_seeds(bench::Work& work, const std::string& seeds) {
    const auto dash = seeds.find('-');
    try {
        work.first_seed = std::stoull(seeds.substr(0, dash));
        work.last_seed = dash == std::string::npos ? work.first_seed : std::stoull(seeds.substr(dash + 1));
    } catch (const std::exception&) {
        throw Error(Fault::bad_request, "Seeds are given as FROM-TO.");
    }
}

int measure(const Options& o) {
    bench::Work work;
    set_seeds(work, o.seeds);
    work.jobs = o.jobs;
    for (bench::Group& g : bench::own_groups())
        if (o.groups.empty() || std::ranges::count(o.groups, g.name) > 0) work.groups.push_back(std::move(g));
    work.on_scene = [](const std::string& name, std::size_t done, std::size_t all) {
        std::fprintf(stderr, "\r%zu of %zu scenes (%s)\033[K", done, all, name.c_str());
    };
    const bench::Results results = bench::run_scenes(work);
    std::fprintf(stderr, "\n");
    for (const bench::Table& t : bench::score_tables(results.groups))
        std::fputs(t.text().c_str(), stdout);
    if (o.per_scene)
        for (const bench::Table& t : bench::score_tables(results.scenes))
            std::fputs(t.text().c_str(), stdout);
    return 0;
}

} // namespace

int main(int argc, char** argv) {
    CLI::App app("Measures the ear on scenes whose truth is known.", "luft-bench");
    Options o;
    app.add_flag("--quick", o.quick, "Few scenes: a first look");
    app.add_option("--group", o.groups, "Only this group; may be given more than once");
    app.add_option("--seeds", o.seeds, "FROM-TO; 1000-1999 are for tuning, 2000 and up for the table")
        ->capture_default_str();
    app.add_option("--write", o.write, "Write ear.md into this folder");
    app.add_flag("--per-scene", o.per_scene, "Also every scene by itself");
    app.add_option("--recordings", o.recordings, "Folder of recordings with labels by hand");
    app.add_option("--jobs", o.jobs, "Threads")->check(CLI::Range(1, 64))->capture_default_str();
    CLI11_PARSE(app, argc, argv);
    try {
        return measure(o);
    } catch (const Error& e) {
        std::fprintf(stderr, "luft-bench: %s %s\n", e.what(), e.advice().c_str());
        return 1;
    }
}
