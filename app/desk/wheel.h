// The mouse wheel over what scrolls up and down.
#pragma once

#include <wx/scrolwin.h>

#include <algorithm>

namespace luft::desk {

/// For windows that scroll by single units. `notch`: units that a notch scrolls.
inline void scroll_by_wheel(wxScrolled<wxWindow>& window, const wxMouseEvent& event, int notch = 90) {
    const double notches = static_cast<double>(event.GetWheelRotation()) / event.GetWheelDelta();
    const int down = static_cast<int>(notches * window.FromDIP(notch));
    window.Scroll(0, std::max(0, window.GetViewStart().y - down));
}

} // namespace luft::desk
