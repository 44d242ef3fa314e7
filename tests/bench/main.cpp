// luft-bench: how well the ear hears, in figures.
#include "base/error.h"
#include "bench/design_table.h"
#include "bench/report.h"

#include <CLI/CLI.hpp>
#include <unistd.h>

#include <chrono>
#include <cstdio>
#include <future>
#include <thread>

using namespace luft;

namespace {

struct Options {
    bool quick = false, per_scene = false;
    std::vector<std::string> groups;
    std::string seeds, write, recordings;
    int jobs = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
    double listen_for = 0;
    std::string round;
};

bench::Seeded seeded(bench::Group group, const std::string& seeds) {
    bench::Seeded s{std::move(group)};
    const auto dash = seeds.find('-');
    try {
        s.first = std::stoull(seeds.substr(0, dash));
        s.last = dash == std::string::npos ? s.first : std::stoull(seeds.substr(dash + 1));
    } catch (const std::exception&) {
        throw Error(Fault::bad_request, "Seeds are given as FROM-TO.");
    }
    return s;
}

bench::Work work_of(const Options& o) {
    bench::Work work;
    work.jobs = o.jobs;
    const std::string seeds = !o.seeds.empty() ? o.seeds : o.quick ? "2000-2001" : "2000-2007";
    const auto add = [&](std::vector<bench::Group> groups, const std::string& of) {
        for (bench::Group& g : groups)
            if (o.groups.empty() || std::ranges::count(o.groups, g.name) > 0)
                work.groups.push_back(seeded(std::move(g), of));
    };
    if (!o.recordings.empty()) {
        add(bench::recorded_groups(o.recordings), "0");
    } else {
        add(bench::own_groups(), seeds);
        add(bench::independent_groups(), seeds);
    }
    if (work.groups.empty()) throw Error(Fault::not_found, "There is no group of that name.");
    if (::isatty(STDERR_FILENO))
        work.on_scene = [](const std::string& name, std::size_t done, std::size_t all) {
            std::fprintf(stderr, "\r%zu of %zu scenes (%s)\033[K%s", done, all, name.c_str(),
                         done == all ? "\n" : "");
        };
    return work;
}

int measure(const Options& o, const std::string& program) {
    const auto begun = std::chrono::steady_clock::now();
    bench::Work work = work_of(o);
    const bool everything = o.groups.empty() && o.recordings.empty();
    std::future<double> hour; // a process of its own, beside the scenes
    if (everything && !o.quick)
        hour = std::async(std::launch::async,
                          [program] { return bench::measure_memory(program, Seconds(3600)); });

    const bench::Results results = bench::run_scenes(work);
    std::vector<bench::Table> tables = bench::score_tables(results.groups);
    if (everything) {
        bench::Machine machine;
        machine.loudness = bench::measure_loudness();
        if (hour.valid()) machine.hour_megabytes = hour.get();
        const Seconds length(o.quick ? 20 : 60);
        machine.solo = bench::measure_speed(false, length, o.quick ? 1 : 3);
        machine.accompanied = bench::measure_speed(true, length, o.quick ? 1 : 3);
        tables.insert(tables.begin(), bench::design_table(results.groups, machine));
        tables.push_back(bench::speed_table(machine));
    }
    bench::print(tables);
    if (o.per_scene) bench::print(bench::score_tables(results.scenes));
    if (!o.write.empty()) bench::write_page(o.write, work, tables);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begun;
    std::fprintf(stderr, "%.0f s in all\n", took.count());
    return 0;
}

} // namespace

int main(int argc, char** argv) {
    CLI::App app("Measures the ear on scenes whose truth is known.", "luft-bench");
    Options o;
    app.add_flag("--quick", o.quick, "Two scenes a group and a rough timing: a first look");
    app.add_option("--group", o.groups, "Only this group; may be given more than once");
    app.add_option("--seeds", o.seeds,
                   "FROM-TO; 1000-1999 are for tuning, 2000 and up for the table; usually 2000-2007");
    app.add_option("--write", o.write, "Write ear.md into this folder");
    app.add_flag("--per-scene", o.per_scene, "Also every scene by itself");
    app.add_option("--recordings", o.recordings, "Only the labelled recordings in this folder");
    app.add_option("--jobs", o.jobs, "Threads")->check(CLI::Range(1, 64))->capture_default_str();
    app.add_option("--listen-for", o.listen_for)->group(""); // how a run measures memory: see speed.h
    app.add_option("--round", o.round)->group("");
    CLI11_PARSE(app, argc, argv);
    try {
        if (o.listen_for > 0) {
            bench::listen_for(Seconds(o.listen_for), o.round);
            return 0;
        }
        return measure(o, argv[0]);
    } catch (const Error& e) {
        std::fprintf(stderr, "luft-bench: %s %s\n", e.what(), e.advice().c_str());
        return 1;
    }
}
