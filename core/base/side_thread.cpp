#include "base/side_thread.h"

#include <utility>

namespace luft {

SideThread::SideThread(std::size_t most_waiting)
    : most_waiting_(most_waiting), thread_([this](const std::stop_token& stop) { work(stop); }) {}

SideThread::~SideThread() {
    thread_.request_stop(); // wakes the thread; jthread waits for its end
}

void SideThread::run(std::function<void()> task) {
    std::unique_lock hold(lock_);
    changed_.wait(hold, [&] { return waiting_.size() < most_waiting_ || fault_; });
    rethrow();
    waiting_.push_back(std::move(task));
    changed_.notify_all();
}

void SideThread::finish() {
    std::unique_lock hold(lock_);
    changed_.wait(hold, [&] { return (waiting_.empty() && !busy_) || fault_; });
    rethrow();
}

void SideThread::rethrow() {
    if (fault_) std::rethrow_exception(fault_);
}

void SideThread::work(const std::stop_token& stop) {
    std::unique_lock hold(lock_);
    while (changed_.wait(hold, stop, [&] { return !waiting_.empty(); })) {
        if (stop.stop_requested()) return;
        const auto task = std::move(waiting_.front());
        waiting_.pop_front();
        busy_ = true;
        hold.unlock();
        std::exception_ptr fault;
        try {
            task();
        } catch (...) {
            fault = std::current_exception();
        }
        hold.lock();
        busy_ = false;
        fault_ = fault;
        changed_.notify_all();
        if (fault) return;
    }
}

} // namespace luft
