// The pages as they would be printed, two beside each other; a click goes there.
#pragma once

#include "desk/work/session.h"
#include "sheet/pages.h"

#include <wx/scrolwin.h>
#include <wx/wx.h>

#include <functional>
#include <memory>
#include <vector>

namespace luft::desk {

class PageView : public wxScrolled<wxWindow> {
  public:
    PageView(wxWindow* parent, Session& session, std::function<void(Seconds)> go_to);
    /// Lays the pages out anew if something has changed since; cheap otherwise.
    void bring_up_to_date();

  private:
    void lay_out();
    void paint(wxPaintEvent&);
    void click(wxMouseEvent& event);
    /// Where a page stands, in units of the window.
    [[nodiscard]] wxRect place_of(int page) const;
    const wxBitmap& picture(int page);

    Session& session_;
    std::function<void(Seconds)> go_to_;
    std::unique_ptr<sheet::Pages> pages_;
    std::vector<wxBitmap> pictures_; ///< empty where not drawn yet
    double zoom_ = 1;
    bool stale_ = true;
};

} // namespace luft::desk
