// Beside the sheet: what is selected, with its evidence, and what can be done with it.
#pragma once

#include "desk/commands.h"
#include "desk/moment_form.h"
#include "desk/work/session.h"

#include <wx/scrolwin.h>
#include <wx/statline.h>
#include <wx/wx.h>

#include <functional>

namespace luft::desk {

class SidePanel : public wxScrolledWindow {
  public:
    SidePanel(wxWindow* parent, Session& session, std::function<void(Do)> run,
              std::function<void(const std::function<void()>&)> guarded);

    [[nodiscard]] MomentForm& form() { return *form_; }
    /// The line over the review buttons: how many proposals are open.
    void show_open(std::size_t count);

  private:
    void refresh();
    void set_lines(const std::vector<std::string>& lines);

    Session& session_;
    std::function<void(Do)> run_;
    wxStaticText* open_;
    wxStaticText* title_;
    wxStaticText* when_;
    wxStaticText* state_;
    wxButton* keep_;
    wxButton* drop_;
    wxButton* change_;
    wxStaticText* facts_;
    MomentForm* form_;
};

} // namespace luft::desk
