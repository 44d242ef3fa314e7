#include "desk/work/job.h"

#include <algorithm>
#include <utility>

namespace luft::desk {
namespace {

constexpr double kEnoughToJudge = 0.05;
constexpr double kEnoughSeconds = 1;

const project::Performance& find(const std::vector<project::Performance>& all, project::PerformanceId id) {
    const auto it = std::ranges::find(all, id, &project::Performance::id);
    if (it == all.end()) throw Error(Fault::not_found, "The performance isn't in the project any more.");
    return *it;
}

} // namespace

Job::Job(std::filesystem::path project, Task task)
    : project_(std::move(project)), task_(std::move(task)), began_(std::chrono::steady_clock::now()),
      thread_([this](const std::stop_token& stop) { work(stop); }) {}

Job::~Job() {
    thread_.request_stop();
}

Job::State Job::state() const {
    State state;
    state.finished = finished_;
    const std::lock_guard guard(lock_);
    state.done = done_;
    state.doing = doing_;
    const double passed = std::chrono::duration<double>(std::chrono::steady_clock::now() - began_).count();
    if (done_ >= kEnoughToJudge && passed >= kEnoughSeconds)
        state.left = Seconds(passed * (1 - done_) / done_);
    return state;
}

void Job::work(const std::stop_token& stop) {
    const Progress progress(
        [this](double done, std::string_view doing) {
            const std::lock_guard guard(lock_);
            done_ = std::clamp(done, 0.0, 1.0);
            doing_ = doing;
        },
        stop);
    try {
        if (const auto* wanted = std::get_if<Files>(&task_))
            write(*wanted, progress);
        else if (const auto* two = std::get_if<Match>(&task_))
            outcome_.matched = match(project::Project::open(project_, project::Access::read), two->a, two->b,
                                     progress, two->before.get());
        else
            listen(progress);
    } catch (const Stopped&) {
        // Nothing went wrong, and nothing was stored.
    } catch (const Error& error) {
        outcome_.fault = error;
    } catch (const std::exception& error) {
        outcome_.fault = Error(Fault::internal, error.what());
    }
    finished_ = true;
}

void Job::listen(const Progress& progress) {
    project::Project project = project::Project::open(project_);
    if (const auto* recording = std::get_if<intake::Recording>(&task_)) {
        outcome_.added = intake::add(project, *recording, progress);
        return;
    }
    const auto& again = std::get<Again>(task_);
    const auto all = project.performances();
    outcome_.added =
        intake::listen_again(project, find(all, again.performance), again.accompaniment, progress);
}

void Job::write(const Files& wanted, const Progress& progress) {
    const project::Project project = project::Project::open(project_, project::Access::read);
    const auto all = project.performances();
    outcome_.written =
        files::write_all(project, {find(all, wanted.performance)}, wanted.folder, progress,
                         [&](const files::Format& f) { return wanted.formats.contains(f.key); });
}

std::vector<Job::Match> drop_comparisons(std::deque<Job::Task>& waiting) {
    std::vector<Job::Match> dropped;
    for (const auto& task : waiting)
        if (const auto* match = std::get_if<Job::Match>(&task)) dropped.push_back(*match);
    std::erase_if(waiting, is_comparison);
    return dropped;
}

} // namespace luft::desk
