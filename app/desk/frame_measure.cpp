// The benchmark of the window: how long it takes to open and to paint.
#include "desk/frame.h"

#include <wx/crt.h>

#include <algorithm>
#include <chrono>
#include <numeric>

namespace luft::desk {

void Frame::measure(int frames) {
    if (!session_.is_open()) {
        wxPuts("Name a project to measure with.");
        Close();
        return;
    }
    const auto began = std::chrono::steady_clock::now();
    session_.open(session_.project().file());
    sheet_->Refresh();
    sheet_->Update();
    const double opened = std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count();
    auto times = sheet_->measure_painting(frames);
    std::ranges::sort(times);
    const auto at = [&](double share) {
        return times[static_cast<std::size_t>(share * static_cast<double>(times.size() - 1))];
    };
    wxPrintf("%zu marks, %zu rows, %d by %d\n", session_.source().marks.size(),
             sheet_->layout() ? sheet_->layout()->rows().size() : 0, GetClientSize().x, GetClientSize().y);
    wxPrintf("opened to first paint  %.3f s\n", opened);
    wxPrintf("painting a frame       median %.2f ms, 95 of 100 under %.2f ms, worst %.2f ms\n",
             at(0.5) * 1000, at(0.95) * 1000, times.back() * 1000);
    Close();
}

} // namespace luft::desk
