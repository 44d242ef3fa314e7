#include "bench/run.h"

#include "bench/aubio.h"
#include "bench/truth.h"
#include "singer/memory_source.h"

#include <exception>
#include <mutex>
#include <thread>

namespace luft::bench {
namespace {

struct Task {
    std::size_t group = 0;
    std::uint64_t seed = 0;
};

Scores listen_and_score(const Scene& scene, bool truth_as_answer, AubioTrackers& aubio) {
    if (truth_as_answer) return score(scene, answer_of(scene.truth, scene.length()));
    singer::MemorySource source(scene.samples, scene.rate, scene.channels);
    Scores s = score(scene, marks::listen(source));
    s.others = aubio.track(scene);
    return s;
}

} // namespace

Results run_scenes(const Work& work) {
    std::vector<Task> tasks;
    for (std::size_t g = 0; g < work.groups.size(); ++g)
        for (std::uint64_t seed = work.groups[g].first; seed <= work.groups[g].last; ++seed)
            tasks.push_back({g, seed});
    std::vector<Scores> scores(tasks.size());
    std::vector<AubioTrackers> aubio(static_cast<std::size_t>(std::max(1, work.jobs)));

    std::mutex mutex;
    std::size_t next = 0, done = 0;
    std::exception_ptr failed;
    const auto work_on = [&](AubioTrackers& own) {
        for (;;) {
            std::size_t at = 0;
            {
                const std::lock_guard lock(mutex);
                if (failed || next == tasks.size()) return;
                at = next++;
            }
            const Group& group = work.groups[tasks[at].group].group;
            try {
                scores[at] = listen_and_score(group.make(tasks[at].seed), work.truth_as_answer, own);
            } catch (...) {
                const std::lock_guard lock(mutex);
                failed = std::current_exception();
            }
            const std::lock_guard lock(mutex);
            ++done;
            if (work.on_scene) work.on_scene(group.name, done, tasks.size());
        }
    };
    {
        std::vector<std::jthread> threads;
        for (AubioTrackers& own : aubio)
            threads.emplace_back([&work_on, &own] { work_on(own); });
    }
    if (failed) std::rethrow_exception(failed);

    Results out;
    for (const Seeded& s : work.groups)
        out.groups.push_back({s.group.name, s.group.kind, {}});
    for (std::size_t k = 0; k < tasks.size(); ++k) {
        GroupScores& group = out.groups[tasks[k].group];
        group.scores += scores[k];
        out.scenes.push_back({group.name + " " + std::to_string(tasks[k].seed), group.kind, scores[k]});
    }
    return out;
}

} // namespace luft::bench
