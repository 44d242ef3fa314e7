// Work that can be done beside: a second core, where there is one.
#pragma once

#include <condition_variable>
#include <cstddef>
#include <deque>
#include <exception>
#include <functional>
#include <mutex>
#include <thread>

namespace luft {

/// Runs tasks one after the other on a thread of its own. What a task throws comes out of the next `run` or
/// `finish`; later tasks are then left out. The destructor leaves out what hasn't begun.
class SideThread {
  public:
    explicit SideThread(std::size_t most_waiting = kMostWaiting);
    SideThread(const SideThread&) = delete;
    SideThread& operator=(const SideThread&) = delete;
    ~SideThread();

    /// Queues a task; waits while `most_waiting` are there, so that memory stays bounded.
    void run(std::function<void()> task);
    /// Waits until all tasks are done.
    void finish();

    static constexpr std::size_t kMostWaiting = 64;

  private:
    void work(const std::stop_token& stop);
    void rethrow();

    std::mutex lock_;
    std::condition_variable_any changed_;
    std::deque<std::function<void()>> waiting_;
    std::size_t most_waiting_;
    bool busy_ = false;
    std::exception_ptr fault_;
    std::jthread thread_; ///< last: it uses all of the above
};

} // namespace luft
