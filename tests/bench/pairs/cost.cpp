#include "bench/pairs/cost.h"

#include "base/error.h"
#include "base/text.h"
#include "compare/columns.h"
#include "compare/material.h"

#include <time.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>

namespace luft::bench {
namespace {

using namespace compare;

constexpr int kKey = 3;

double processor_seconds() {
    timespec t{};
    ::clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return static_cast<double>(t.tv_sec) + 1e-9 * static_cast<double>(t.tv_nsec);
}

double megabytes_of(const char* name) {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with(name))
            return std::strtod(line.c_str() + std::string(name).size(), nullptr) * 1024 / 1e6;
    throw Error(Fault::internal, "The system doesn't tell a process's memory.");
}

/// Lets the peak begin anew at what is held now (proc(5), clear_refs).
void forget_peak() {
    std::ofstream refs("/proc/self/clear_refs");
    refs << "5" << std::flush;
    if (!refs) throw Error(Fault::internal, "The system doesn't forget a process's peak memory.");
}

/// Chords that change every two seconds, the same in both up to the key: what is heard where nobody sings.
void add_harmony(Side& side, int key) {
    side.harmony.emplace();
    const auto count = static_cast<std::size_t>(side.duration / kHarmonyHop);
    for (std::size_t i = 0; i < count; ++i) {
        PitchClasses chord{};
        const int root = static_cast<int>(i / 20 * 5 % 12) + key + 12;
        for (const int k : {0, 4, 7})
            chord[static_cast<std::size_t>((root + k) % 12)] = 0.577F;
        side.harmony->columns.push_back(chord);
    }
}

Side performance(Seconds length, int key, double speed, std::uint64_t seed) {
    const auto score = test::random_score(3001, static_cast<int>(std::ceil(length.value() / 18.5)));
    Side side = test::perform(score, {.seed = seed, .speed = speed, .rubato = 0.1, .semitones = key}).side;
    add_harmony(side, key);
    return side;
}

/// Cost of the cheapest way through the whole table.
float plain_warping(const Columns& a, const Columns& b) {
    const std::size_t width = b.all.size();
    std::vector<float> table(a.all.size() * width);
    for (std::size_t i = 0; i < a.all.size(); ++i)
        for (std::size_t k = 0; k < width; ++k) {
            float like = 0;
            for (std::size_t c = 0; c < 12; ++c)
                like += a.all[i].sung[c] * b.all[k].sung[c];
            float before = i == 0 && k == 0 ? 0 : 1e9F;
            if (i > 0) before = std::min(before, table[(i - 1) * width + k]);
            if (k > 0) before = std::min(before, table[i * width + k - 1]);
            if (i > 0 && k > 0) before = std::min(before, table[(i - 1) * width + k - 1]);
            table[i * width + k] = before + 1 - like;
        }
    return table.back();
}

} // namespace

void show_cost(Seconds length) {
    const Side a = performance(length, 0, 1, 1), b = performance(length, kKey, 0.95, 2);
    constexpr Seconds kColumn{0.25};
    double ours = 1e9, plain = 1e9, held = 0, peak = 0;
    for (int run = 0; run < 3; ++run) {
        forget_peak();
        held = megabytes_of("VmRSS:");
        double before = processor_seconds();
        const Alignment found = align(a, b);
        ours = std::min(ours, processor_seconds() - before);
        if (run == 0) peak = megabytes_of("VmHWM:") - held; // later runs find the memory already there
        if (found.semitones != kKey) throw Error(Fault::internal, "The key wasn't found.");
        before = processor_seconds();
        const Columns of_a = columns_of(a, {Seconds(0), a.duration}, kColumn);
        Columns of_b = columns_of(b, {Seconds(0), b.duration}, kColumn);
        turn(of_b, kKey);
        if (plain_warping(of_a, of_b) <= 0) throw Error(Fault::internal, "Warping cost nothing.");
        plain = std::min(plain, processor_seconds() - before);
    }
    const double table = a.duration / kColumn * (b.duration / kColumn) * sizeof(float) / 1e6;
    std::printf("%.1f %.4f %.4f %.2f %.2f\n", a.duration.value(), ours, plain, peak, table);
}

Cost measure_cost(const std::string& program, Seconds length) {
    const std::string command = "exec '" + program + "' --cost " + fixed(length.value(), 0);
    FILE* pipe = ::popen(command.c_str(), "r");
    Cost c;
    double measured = 0;
    const bool read = pipe && std::fscanf(pipe, "%lf %lf %lf %lf %lf", &measured, &c.seconds,
                                          &c.plain_seconds, &c.megabytes, &c.plain_megabytes) == 5;
    if (!pipe || ::pclose(pipe) != 0 || !read)
        throw Error(Fault::internal, "The cost of aligning could not be measured.");
    c.length = Seconds(measured);
    return c;
}

} // namespace luft::bench
