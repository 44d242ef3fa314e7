#include "base/in_parallel.h"

#include <algorithm>
#include <chrono>
#include <condition_variable>
#include <mutex>
#include <thread>
#include <vector>

namespace luft {
namespace {

/// How often the caller's thread reports, and looks whether it was told to stop.
constexpr std::chrono::milliseconds kBetweenLooks{50};

class Pool {
  public:
    using Work = std::function<void(std::size_t, const Progress&)>;

    Pool(std::size_t count, std::size_t jobs, const Work& work)
        : work_(work), jobs_(jobs), done_(count), ended_(count), faults_(count) {
        for (std::size_t i = 0; i < std::min(jobs, count); ++i)
            threads_.emplace_back([this] { run(); });
    }
    Pool(const Pool&) = delete;
    Pool& operator=(const Pool&) = delete;
    ~Pool() {
        stop_.request_stop();
        {
            const std::lock_guard hold(lock_);
            leaving_ = true;
        }
        changed_.notify_all();
    }

    /// Waits until that one has ended; steps `progress` meanwhile.
    std::exception_ptr wait_for(std::size_t i, const Progress& progress, std::string_view doing) {
        std::unique_lock hold(lock_);
        for (;;) {
            double sum = 0;
            for (const double part : done_)
                sum += part;
            hold.unlock();
            progress.step(sum / static_cast<double>(done_.size()), doing);
            hold.lock();
            if (changed_.wait_for(hold, kBetweenLooks, [&] { return ended_[i]; })) return faults_[i];
        }
    }

    void taken(std::size_t i) {
        {
            const std::lock_guard hold(lock_);
            taken_ = i + 1;
        }
        changed_.notify_all();
    }

  private:
    void run() {
        std::unique_lock hold(lock_);
        for (;;) {
            changed_.wait(hold,
                          [&] { return leaving_ || next_ >= ended_.size() || next_ < taken_ + 2 * jobs_; });
            if (leaving_ || next_ >= ended_.size()) return;
            const std::size_t i = next_++;
            hold.unlock();
            std::exception_ptr fault;
            try {
                work_(i, progress_of(i));
            } catch (...) {
                fault = std::current_exception();
            }
            hold.lock();
            done_[i] = 1;
            faults_[i] = fault;
            ended_[i] = true;
            changed_.notify_all();
        }
    }

    Progress progress_of(std::size_t i) {
        return Progress(
            [this, i](double done, std::string_view) {
                const std::lock_guard hold(lock_);
                done_[i] = std::clamp(done, 0.0, 1.0);
            },
            stop_.get_token());
    }

    const Work& work_;
    std::size_t jobs_;
    std::stop_source stop_;
    std::mutex lock_; ///< of all that follows
    std::condition_variable changed_;
    std::vector<double> done_;
    std::vector<bool> ended_;
    std::vector<std::exception_ptr> faults_;
    std::size_t next_ = 0, taken_ = 0;
    bool leaving_ = false;
    std::vector<std::jthread> threads_; ///< last: they use all of the above
};

} // namespace

int cores() {
    return std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
}

void in_parallel(std::size_t count, int jobs, const Progress& progress, std::string_view doing,
                 const std::function<void(std::size_t, const Progress&)>& work,
                 const std::function<void(std::size_t, const std::exception_ptr&)>& take) {
    Pool pool(count, static_cast<std::size_t>(std::max(jobs, 1)), work);
    for (std::size_t i = 0; i < count; ++i) {
        const std::exception_ptr fault = pool.wait_for(i, progress, doing);
        take(i, fault);
        pool.taken(i);
    }
}

} // namespace luft
