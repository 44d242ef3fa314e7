#include "desk/piece_dialog.h"

#include "desk/text.h"

namespace luft::desk {

PieceDialog::PieceDialog(wxWindow* parent, const project::Piece& piece,
                         const project::Performance* performance)
    : wxDialog(parent, wxID_ANY, "About this piece", wxDefaultPosition, wxDefaultSize,
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER) {
    auto* column = new wxBoxSizer(wxVERTICAL);
    auto* grid = new wxFlexGridSizer(2, FromDIP(wxSize(12, 7)));
    grid->AddGrowableCol(1);
    const auto field = [&](const wxString& words, const std::string& value, long style = 0, int height = -1) {
        grid->Add(new wxStaticText(this, wxID_ANY, words), 0,
                  (style & wxTE_MULTILINE) != 0 ? static_cast<int>(wxTOP)
                                                : static_cast<int>(wxALIGN_CENTRE_VERTICAL),
                  FromDIP(4));
        auto* text = new wxTextCtrl(this, wxID_ANY, shown(value), wxDefaultPosition,
                                    FromDIP(wxSize(420, height)), style);
        grid->Add(text, 1, wxEXPAND);
        return text;
    };
    title_ = field("Title", piece.title);
    writer_ = field("Written by", piece.writer);
    key_ = field("Key", piece.key);
    metre_ = field("Metre", piece.metre);
    words_ = field("Words, a sung line a line", piece.words, wxTE_MULTILINE, 170);
    if (performance) {
        performance_ = *performance;
        performer_ = field("Performer", performance->performer);
        source_ = field("Source", performance->source);
        permission_ = field("Permission", performance->permission);
    }
    column->Add(grid, 1, wxEXPAND | wxALL, FromDIP(16));
    column->Add(CreateButtonSizer(wxOK | wxCANCEL), 0, wxEXPAND | wxALL, FromDIP(12));
    SetSizerAndFit(column);
    CentreOnParent();
}

project::Piece PieceDialog::piece() const {
    return {typed(title_->GetValue()), typed(writer_->GetValue()), typed(key_->GetValue()),
            typed(metre_->GetValue()), typed(words_->GetValue())};
}

std::optional<project::Performance> PieceDialog::performance() const {
    if (!performance_) return std::nullopt;
    project::Performance now = *performance_;
    now.performer = typed(performer_->GetValue());
    now.source = typed(source_->GetValue());
    now.permission = typed(permission_->GetValue());
    const bool same = now.performer == performance_->performer && now.source == performance_->source &&
                      now.permission == performance_->permission;
    return same ? std::nullopt : std::optional(now);
}

} // namespace luft::desk
