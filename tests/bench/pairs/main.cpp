// luft-bench-pairs: how well and how quickly two performances are aligned, in figures.
#include "base/error.h"
#include "base/write_file.h"
#include "bench/pairs/page.h"

#include <CLI/CLI.hpp>

#include <cstdio>
#include <thread>

using namespace luft;

namespace {

struct Options {
    bool quick = false;
    std::string seeds, write, recordings;
    int jobs = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
    double cost = 0;
};

bench::PairWork work_of(const Options& o) {
    bench::PairWork work{.jobs = o.jobs, .recordings = o.recordings};
    if (o.quick) work.last = work.first;
    if (o.seeds.empty()) return work;
    const auto dash = o.seeds.find('-');
    try {
        work.first = std::stoull(o.seeds.substr(0, dash));
        work.last = dash == std::string::npos ? work.first : std::stoull(o.seeds.substr(dash + 1));
    } catch (const std::exception&) {
        throw Error(Fault::bad_request, "Seeds are given as FROM-TO.");
    }
    return work;
}

int measure(const Options& o, const std::string& program) {
    const bench::PairWork work = work_of(o);
    bench::PairResults results;
    if (work.recordings.empty()) // first, while only one thread works
        for (const double minutes : {10.0, 60.0})
            results.costs.push_back(bench::measure_cost(program, Seconds(60 * minutes)));
    results.warped = bench::warped_rows(work);
    if (work.recordings.empty()) {
        results.voices = bench::two_voice_rows(work);
        results.bands = bench::band_rows(work);
    }
    const std::string page = bench::pairs_page(work, results);
    std::fputs(page.c_str(), stdout);
    if (!o.write.empty()) write_file(std::filesystem::path(o.write) / "compare.md", page);
    return 0;
}

} // namespace

int main(int argc, char** argv) {
    CLI::App app("Measures the aligning of two performances whose truth is known.", "luft-bench-pairs");
    Options o;
    app.add_flag("--quick", o.quick, "One tune only: a first look");
    app.add_option("--seeds", o.seeds, "FROM-TO; usually 3001-3003");
    app.add_option("--write", o.write, "Write compare.md into this folder");
    app.add_option("--recordings", o.recordings, "Warp the labelled recordings in this folder instead");
    app.add_option("--jobs", o.jobs, "Threads")->check(CLI::Range(1, 64))->capture_default_str();
    app.add_option("--cost", o.cost)->group(""); // how a run measures time and memory: see cost.h
    CLI11_PARSE(app, argc, argv);
    try {
        if (o.cost > 0) {
            bench::show_cost(Seconds(o.cost));
            return 0;
        }
        return measure(o, argv[0]);
    } catch (const Error& e) {
        std::fprintf(stderr, "luft-bench-pairs: %s %s\n", e.what(), e.advice().c_str());
        return 1;
    }
}
