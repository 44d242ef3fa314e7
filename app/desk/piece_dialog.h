// The piece and the performance, in words.
#pragma once

#include "project/model.h"

#include <wx/wx.h>

#include <optional>

namespace luft::desk {

class PieceDialog : public wxDialog {
  public:
    PieceDialog(wxWindow* parent, const project::Piece& piece, const project::Performance* performance);

    [[nodiscard]] project::Piece piece() const;
    /// With the notes as they are now; none when no performance was given or nothing of it changed.
    [[nodiscard]] std::optional<project::Performance> performance() const;

  private:
    wxTextCtrl* title_;
    wxTextCtrl* writer_;
    wxTextCtrl* key_;
    wxTextCtrl* metre_;
    wxTextCtrl* words_;
    std::optional<project::Performance> performance_;
    wxTextCtrl* performer_ = nullptr;
    wxTextCtrl* source_ = nullptr;
    wxTextCtrl* permission_ = nullptr;
};

} // namespace luft::desk
