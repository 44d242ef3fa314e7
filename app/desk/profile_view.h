// The profile in the window, live from marks and tags; its examples can be played.
#pragma once

#include "desk/work/session.h"

#include <wx/html/htmlwin.h>
#include <wx/wx.h>

#include <functional>

namespace luft::desk {

class ProfileView : public wxHtmlWindow {
  public:
    ProfileView(wxWindow* parent, Session& session, std::function<void(Span)> play);
    /// Makes it anew if something has changed since; cheap otherwise.
    void bring_up_to_date();

  private:
    void OnLinkClicked(const wxHtmlLinkInfo& link) override;

    Session& session_;
    std::function<void(Span)> play_;
    bool stale_ = true;
};

} // namespace luft::desk
