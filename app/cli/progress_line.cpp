#include "cli/progress_line.h"

#include <unistd.h>

#include <algorithm>
#include <cstdio>

namespace luft::cli {
namespace {

constexpr std::chrono::milliseconds kBetweenPaints{100}; // quick enough to look alive
constexpr int kMostColumns = 60;                         // stays on one line of an 80-column terminal

} // namespace

ProgressLine::ProgressLine() : on_terminal_(::isatty(STDERR_FILENO) == 1) {}

ProgressLine::~ProgressLine() {
    clear();
}

void ProgressLine::clear() {
    if (shown_) std::fputs("\r\033[K", stderr); // back to the start of the line, and clear it
    shown_ = false;
}

void ProgressLine::show(double done, std::string_view doing) {
    if (!on_terminal_) return;
    const auto now = std::chrono::steady_clock::now();
    if (shown_ && now < next_) return;
    next_ = now + kBetweenPaints;
    shown_ = true;
    const int percent = static_cast<int>(100 * std::clamp(done, 0.0, 1.0));
    std::fprintf(stderr, "\r%3d %%  %.*s\033[K", percent,
                 static_cast<int>(std::min<std::size_t>(doing.size(), kMostColumns)), doing.data());
    std::fflush(stderr);
}

} // namespace luft::cli
