// What the script is laid out by: speaking rate, limits on quoting, frame rate.
#pragma once

#include "project/model.h"

#include <wx/spinctrl.h>
#include <wx/wx.h>

namespace luft::desk {

class ScriptSettingsDialog : public wxDialog {
  public:
    ScriptSettingsDialog(wxWindow* parent, const project::ScriptSettings& settings);
    [[nodiscard]] project::ScriptSettings settings() const;

  private:
    project::ScriptSettings before_;
    wxSpinCtrl* words_;
    wxSpinCtrlDouble* between_;
    wxSpinCtrlDouble* quote_;
    wxCheckBox* limit_share_;
    wxSpinCtrl* share_;
    wxChoice* rate_;
    wxCheckBox* drop_;
};

} // namespace luft::desk
