#include "cli/interrupt.h"

#include <unistd.h>

#include <csignal>
#include <ctime>

namespace luft::cli {
namespace {

sigset_t stop_signals() {
    sigset_t set;
    sigemptyset(&set);
    sigaddset(&set, SIGINT);
    sigaddset(&set, SIGTERM);
    return set;
}

/// How often the waiting thread looks whether it is still wanted.
constexpr timespec kPatience{0, 20'000'000};

} // namespace

Interrupt::Interrupt() {
    const sigset_t set = stop_signals();
    pthread_sigmask(SIG_BLOCK, &set, nullptr);
    // A thread that waits for the signals may do anything in answer; a signal handler may do nearly nothing.
    waiter_ = std::jthread([set, stop = stop_](std::stop_token unwanted) mutable {
        while (!unwanted.stop_requested())
            if (sigtimedwait(&set, nullptr, &kPatience) > 0) {
                if (stop.stop_requested()) ::_exit(kStoppedStatus);
                stop.request_stop();
            }
    });
}

Interrupt::~Interrupt() {
    waiter_.request_stop();
    waiter_.join();
    const sigset_t set = stop_signals();
    pthread_sigmask(SIG_UNBLOCK, &set, nullptr);
}

} // namespace luft::cli
