#include "cli/interrupt.h"

#include <unistd.h>

#include <csignal>
#include <ctime>

namespace luft::cli {
namespace {

/// Without those that whoever started the program wants ignored: nohup does so with SIGHUP, and shells with
/// SIGINT for what they run in the background. A blocked signal would come in although it is ignored.
sigset_t stop_signals() {
    sigset_t set;
    sigemptyset(&set);
    for (const int one : {SIGINT, SIGTERM, SIGHUP}) {
        struct sigaction now {};
        if (::sigaction(one, nullptr, &now) == 0 && now.sa_handler != SIG_IGN) sigaddset(&set, one);
    }
    return set;
}

/// How often the waiting thread looks whether it is still wanted.
constexpr timespec kPatience{0, 20'000'000};

} // namespace

Interrupt::Interrupt() {
    const sigset_t signals = stop_signals();
    pthread_sigmask(SIG_BLOCK, &signals, nullptr);
    // A thread that waits for the signals may do anything in answer; a signal handler may do nearly nothing.
    waiter_ = std::jthread([set = signals, stop = stop_](const std::stop_token& unwanted) mutable {
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
    // They stay blocked: the work is done, and a program that is ending anyway mustn't look as if it was
    // stopped.
}

} // namespace luft::cli
