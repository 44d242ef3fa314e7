// What a newcomer sees first: what this is for, and the three ways in.
#pragma once

#include "desk/commands.h"

#include <wx/wx.h>

#include <functional>
#include <vector>

namespace luft::desk {

class StartPage : public wxPanel {
  public:
    /// `run` does a command; recent projects are commands too.
    StartPage(wxWindow* parent, std::function<void(Do)> run);

    /// Projects that were open before, newest first; missing ones are shown greyed.
    void show_recent(const std::vector<wxString>& files);

  private:
    std::function<void(Do)> run_;
    wxBoxSizer* recent_;
};

} // namespace luft::desk
