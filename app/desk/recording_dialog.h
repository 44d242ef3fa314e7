// What to say about a recording before it is listened to.
#pragma once

#include "intake/intake.h"
#include "project/model.h"

#include <wx/filename.h>
#include <wx/wx.h>

namespace luft::desk {

/// For a new project (with the piece's title and the file to keep it in), or for another performance in one.
class RecordingDialog : public wxDialog {
  public:
    RecordingDialog(wxWindow* parent, const wxString& media, bool new_project);

    [[nodiscard]] intake::Recording recording() const;
    [[nodiscard]] project::Piece piece() const;
    [[nodiscard]] std::filesystem::path project_file() const;

  private:
    void check();
    void choose_file();

    wxString media_;
    wxTextCtrl* title_ = nullptr;
    wxTextCtrl* writer_ = nullptr;
    wxTextCtrl* file_ = nullptr;
    wxTextCtrl* label_ = nullptr;
    wxTextCtrl* performer_;
    wxTextCtrl* source_;
    wxTextCtrl* permission_;
    wxChoice* voice_;
    wxCheckBox* carry_;
    wxStaticText* hint_;
    wxButton* ok_;
};

} // namespace luft::desk
