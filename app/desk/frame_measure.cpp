// The benchmark of the window: how long it takes to open and to paint.
#include "desk/frame.h"

#include <wx/crt.h>

#include <algorithm>
#include <chrono>
#include <numeric>

namespace luft::desk {
namespace {

constexpr int kScrollStep = 30; ///< units a frame: at 60 frames a second two pages and a half each second

} // namespace

void Frame::measure(int frames) {
    if (!session_.is_open()) {
        wxPuts("Name a project to measure with.");
        Close();
        return;
    }
    // As large as the screen.
    SetSize(wxGetClientDisplayRect());
    wxYield();
    const auto began = std::chrono::steady_clock::now();
    session_.open(session_.project().file());
    sheet_->Refresh();
    sheet_->Update();
    const double opened = std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count();
    wxPrintf("%zu marks, %zu rows, sheet of %d by %d\n", session_.source().marks.size(),
             sheet_->layout() ? sheet_->layout()->rows().size() : 0, sheet_->GetClientSize().x,
             sheet_->GetClientSize().y);
    wxPrintf("opened to first paint: %.3f s\n", opened);
    const auto report = [&](const char* what, std::vector<double> times) {
        std::ranges::sort(times);
        const auto at = [&](double share) {
            return 1000 * times[static_cast<std::size_t>(share * static_cast<double>(times.size() - 1))];
        };
        wxPrintf("%s: median %.2f ms, 95 of 100 under %.2f ms, worst %.2f ms\n", what, at(0.5), at(0.95),
                 at(1));
    };
    report("painting a frame, scrolling", sheet_->measure_painting(frames, kScrollStep));
    report("painting a frame, page by page", sheet_->measure_painting(frames / 4, sheet_->GetClientSize().y));
    Close();
}

} // namespace luft::desk
