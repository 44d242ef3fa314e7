#include "bench/pairs/groups.h"

#include "base/text.h"

#include <atomic>
#include <exception>
#include <mutex>
#include <thread>

namespace luft::bench {
namespace {

using enum singer::VoiceType;

/// Runs every task once, on some threads; what one throws is thrown at the end.
void do_all(const std::vector<std::function<void()>>& tasks, int jobs) {
    std::atomic<std::size_t> next{0};
    std::mutex mutex;
    std::exception_ptr failed;
    const auto work = [&] {
        for (std::size_t i = next++; i < tasks.size(); i = next++)
            try {
                tasks[i]();
            } catch (...) {
                const std::lock_guard lock(mutex);
                failed = std::current_exception();
            }
    };
    {
        std::vector<std::jthread> threads;
        for (int k = 0; k < jobs; ++k)
            threads.emplace_back(work);
    }
    if (failed) std::rethrow_exception(failed);
}

/// Rows that several threads add to.
class Rows {
  public:
    explicit Rows(const std::vector<std::string>& names) {
        for (const std::string& n : names)
            rows_.push_back({n, {}});
    }
    void add(std::size_t row, const std::string& column, const Heard& a, const Heard& b) {
        Meeting met;
        met.add(a, b);
        const std::lock_guard lock(mutex_);
        rows_.at(row).by[column] += met;
    }
    void set_map_error(std::size_t row, Seconds error) {
        const std::lock_guard lock(mutex_);
        rows_.at(row).map_error = error;
    }
    [[nodiscard]] const std::vector<PairRow>& all() const { return rows_; }

  private:
    std::mutex mutex_;
    std::vector<PairRow> rows_;
};

TimeMap as_it_is(Seconds length) {
    return steady(length, 1);
}

/// Recordings of the reader's own, whose truth is the map alone: their notes are those that are labelled, or
/// where none are, a place every half second.
std::vector<std::pair<std::string, Singing>> recorded(const std::string& folder) {
    std::vector<std::pair<std::string, Singing>> out;
    if (folder.empty()) return out;
    for (const Group& g : recorded_groups(folder)) {
        Singing s = singing_of(g.make(0));
        for (Seconds t(0.5); s.notes.empty() && t < s.length() - Seconds(0.5); t += Seconds(0.5))
            s.notes.push_back({t, t + Seconds(0.4)});
        out.emplace_back(g.name, std::move(s));
    }
    return out;
}

constexpr Seconds kWhole{600}; // maps of tunes reach further than any of them

struct Retelling {
    std::string name;
    std::function<TimeMap(std::uint64_t seed)> map;
    int semitones = 0;
};

std::vector<Retelling> retellings() {
    const auto at = [](double speed) { return [speed](std::uint64_t) { return steady(kWhole, speed); }; };
    const auto free = [](double depth) {
        return [depth](std::uint64_t seed) { return rubato(kWhole, depth, seed); };
    };
    return {{"same tempo and key", at(1), 0},
            {"0.75 of the tempo", at(0.75), 0},
            {"1.3 times the tempo", at(1.3), 0},
            {"rubato 0.2, 4 semitones higher", free(0.2), 4},
            {"rubato 0.3, 3 semitones lower", free(0.3), -3}};
}

} // namespace

std::vector<Warp> warps() {
    std::vector<Warp> out;
    for (const double speed : {0.6, 0.7, 0.8, 0.9, 1.1, 1.2, 1.4, 1.6})
        out.push_back({"speed " + fixed(speed, 1), [speed](Seconds l, auto) { return steady(l, speed); }});
    out.push_back({"accelerando 0.75 to 1.35", [](Seconds l, auto) { return leaning(l, 0.75, 1.35); }});
    out.push_back({"ritardando 1.3 to 0.7", [](Seconds l, auto) { return leaning(l, 1.3, 0.7); }});
    out.push_back({"rubato 0.15", [](Seconds l, auto seed) { return rubato(l, 0.15, seed); }});
    out.push_back({"rubato 0.3", [](Seconds l, auto seed) { return rubato(l, 0.3, seed); }});
    for (const int key : {-5, -3, -1, 2, 4, 7})
        out.push_back({(key > 0 ? "+" : "") + std::to_string(key) + " semitones",
                       [](Seconds l, auto) { return as_it_is(l); }, key});
    out.push_back(
        {"rubato 0.3, -5 semitones", [](Seconds l, auto seed) { return rubato(l, 0.3, seed); }, -5});
    out.push_back({"speed 0.7, +7 semitones", [](Seconds l, auto) { return steady(l, 0.7); }, 7});
    return out;
}

std::vector<PairRow> warped_rows(const PairWork& work) {
    const auto all = warps();
    std::vector<std::string> names;
    for (const Warp& w : all)
        names.push_back(w.name);
    Rows rows(names);
    std::vector<std::function<void()>> tasks;
    const auto add = [&](const std::string& voice, std::uint64_t seed, std::function<Singing()> sing) {
        tasks.emplace_back([&rows, &all, voice, seed, sing = std::move(sing)] {
            const Singing sung = sing();
            const Heard a = hear(sung, 0, true);
            for (std::size_t i = 0; i < all.size(); ++i)
                rows.add(i, voice, a,
                         hear(warped(sung, all[i].map(sung.length(), seed), all[i].semitones),
                              all[i].semitones, true));
        });
    };
    for (std::size_t i = 0; i < all.size(); ++i)
        tasks.emplace_back([&rows, &all, i, seed = work.first] {
            rows.set_map_error(i, map_error(all[i].map(Seconds(22), seed), all[i].semitones));
        });
    for (auto& [name, singing] : recorded(work.recordings))
        add(name, 1, [s = std::move(singing)] { return s; });
    for (std::uint64_t seed = work.first; work.recordings.empty() && seed <= work.last; ++seed) {
        add("test voice", seed, [seed] { return sung_song(seed, {.map = as_it_is(kWhole), .seed = seed}); });
        add("festival", seed, [seed] { return singing_of(sung_by_festival(tune_for(seed, 45, 62))); });
        add("soundfont", seed,
            [seed] { return singing_of(sung_by_samples(tune_for(seed, 50, 67), seed % 2 == 0)); });
    }
    do_all(tasks, work.jobs);
    return rows.all();
}

std::vector<PairRow> two_voice_rows(const PairWork& work) {
    const auto all = retellings();
    std::vector<std::string> names;
    for (const Retelling& r : all)
        names.push_back(r.name);
    Rows rows(names);
    std::vector<std::function<void()>> tasks;
    for (std::uint64_t seed = work.first; seed <= work.last; ++seed)
        tasks.emplace_back([&rows, &all, seed] {
            const Tune tune = tune_for(seed, 45, 62);
            const bool choir = seed % 2 == 0;
            const Heard festival = hear(singing_of(sung_by_festival(tune)), 0, true);
            const Heard ours = hear(sung_by_us(tune, tenor, seed), 0, true);
            for (std::size_t i = 0; i < all.size(); ++i) {
                const Retelling& r = all[i];
                const Tune other = retold(tune, r.map(seed), r.semitones),
                           up = retold(other, as_it_is(kWhole), 12);
                const Heard sampled = hear(singing_of(sung_by_samples(up, choir)), r.semitones + 12, true);
                const Heard tenor_too = hear(sung_by_us(other, tenor, seed + 50), r.semitones, true);
                const Heard alto_too = hear(sung_by_us(up, alto, seed + 60), r.semitones + 12, true);
                rows.add(i, "festival, test voice", festival, tenor_too);
                rows.add(i, "soundfont, test voice", ours, sampled);
                rows.add(i, "festival, soundfont", festival, sampled);
                rows.add(i, "two test voices", ours, alto_too);
            }
        });
    do_all(tasks, work.jobs);
    return rows.all();
}

std::vector<PairRow> band_rows(const PairWork& work) {
    Rows rows({"alone against alone", "alone against a band", "a band against another"});
    std::vector<std::function<void()>> tasks;
    for (std::uint64_t seed = work.first; seed <= work.last; ++seed)
        for (const bool harmony : {true, false})
            tasks.emplace_back([&rows, seed, harmony] {
                const SongManner first{.map = as_it_is(kWhole), .seed = seed};
                SongManner with_band = first, other = first;
                with_band.band = seed;
                other = {.map = rubato(kWhole, 0.2, seed), .semitones = 3, .seed = seed + 50};
                SongManner other_band = other;
                other_band.band = seed + 1;
                const Heard a = hear(sung_song(seed, first), 0, harmony),
                            a_band = hear(sung_song(seed, with_band), 0, harmony),
                            b = hear(sung_song(seed, other), 3, harmony),
                            b_band = hear(sung_song(seed, other_band), 3, harmony);
                const std::string column = harmony ? "with harmony" : "without";
                rows.add(0, column, a, b);
                rows.add(1, column, a, b_band);
                rows.add(2, column, a_band, b_band);
            });
    do_all(tasks, work.jobs);
    return rows.all();
}

} // namespace luft::bench
