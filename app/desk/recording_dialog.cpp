#include "desk/recording_dialog.h"

#include "desk/text.h"

#include <wx/filedlg.h>

namespace luft::desk {

RecordingDialog::RecordingDialog(wxWindow* parent, const wxString& media, bool new_project)
    : wxDialog(parent, wxID_ANY, new_project ? "New from a recording" : "Add a performance",
               wxDefaultPosition, wxDefaultSize, wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER),
      media_(media) {
    const wxFileName name(media);
    auto* column = new wxBoxSizer(wxVERTICAL);
    auto* grid = new wxFlexGridSizer(2, FromDIP(wxSize(12, 7)));
    grid->AddGrowableCol(1);
    const auto row = [&](const wxString& words, wxWindow* field) {
        grid->Add(new wxStaticText(this, wxID_ANY, words), 0, wxALIGN_CENTRE_VERTICAL);
        grid->Add(field, 1, wxEXPAND);
    };
    const auto field = [&](const wxString& value, const wxString& hint) {
        auto* text = new wxTextCtrl(this, wxID_ANY, value, wxDefaultPosition, FromDIP(wxSize(400, -1)));
        text->SetHint(hint);
        return text;
    };
    auto* recording = new wxStaticText(this, wxID_ANY, media, wxDefaultPosition, FromDIP(wxSize(400, -1)),
                                       wxST_ELLIPSIZE_START);
    recording->SetToolTip(media);
    row("Recording", recording);
    if (new_project) {
        title_ = field(name.GetName(), "");
        row("Title of the piece", title_);
        writer_ = field("", "may be left empty");
        row("Written by", writer_);
    } else {
        label_ = field("", "made up when empty");
        row("Short label", label_);
    }
    performer_ = field("", "who sings");
    row("Performer", performer_);
    source_ = field("", "where the recording is from");
    row("Source", source_);
    permission_ = field("", "under which permission you quote it");
    row("Permission", permission_);
    const wxString voices[] = {"found out by listening", "the voice alone", "the voice with accompaniment"};
    voice_ = new wxChoice(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, 3, voices);
    voice_->SetSelection(0);
    row("To be heard", voice_);
    if (new_project) {
        auto* line = new wxPanel(this);
        auto* across = new wxBoxSizer(wxHORIZONTAL);
        wxFileName project(name);
        project.SetExt("luft");
        file_ = new wxTextCtrl(line, wxID_ANY, project.GetFullPath());
        auto* choose = new wxButton(line, wxID_ANY, shown("Choose…"));
        choose->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { choose_file(); });
        across->Add(file_, 1, wxALIGN_CENTRE_VERTICAL);
        across->Add(choose, 0, wxLEFT, FromDIP(6));
        line->SetSizer(across);
        row("Project file", line);
        file_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { check(); });
    }
    column->Add(grid, 0, wxEXPAND | wxALL, FromDIP(16));
    carry_ = new wxCheckBox(this, wxID_ANY,
                            "Keep the recording itself inside the project file, to pass it on as one");
    column->Add(carry_, 0, wxLEFT | wxRIGHT, FromDIP(16));
    hint_ = new wxStaticText(this, wxID_ANY, "");
    column->Add(hint_, 0, wxEXPAND | wxLEFT | wxRIGHT | wxTOP, FromDIP(16));
    auto* note = new wxStaticText(
        this, wxID_ANY, "The recording is never altered. Whether you may quote it is for you to settle.");
    column->Add(note, 0, wxLEFT | wxRIGHT | wxTOP, FromDIP(16));
    auto* buttons = new wxStdDialogButtonSizer;
    ok_ = new wxButton(this, wxID_OK, "Listen");
    buttons->AddButton(ok_);
    buttons->AddButton(new wxButton(this, wxID_CANCEL));
    buttons->Realize();
    ok_->SetDefault();
    column->Add(buttons, 0, wxEXPAND | wxALL, FromDIP(12));
    SetSizerAndFit(column);
    CentreOnParent();
    (title_ ? title_ : performer_)->SetFocus();
    check();
}

void RecordingDialog::choose_file() {
    const wxFileName now(file_->GetValue());
    wxFileDialog dialog(this, "Where the project is kept", now.GetPath(), now.GetFullName(),
                        "Luftpause projects (*.luft)|*.luft", wxFD_SAVE);
    if (dialog.ShowModal() == wxID_OK) file_->ChangeValue(dialog.GetPath());
    check();
}

void RecordingDialog::check() {
    wxString fault;
    if (file_) {
        const wxFileName name(file_->GetValue());
        if (file_->IsEmpty())
            fault = "Say where the project is to be kept.";
        else if (name.FileExists())
            fault = "A file of that name is there already; choose another name.";
        else if (!wxFileName::DirExists(name.GetPath()))
            fault = "That folder doesn't exist.";
        else if (!wxFileName::IsDirWritable(name.GetPath()))
            fault = "That folder can't be written to; choose another.";
    }
    hint_->SetLabelText(fault);
    ok_->Enable(fault.empty());
}

intake::Recording RecordingDialog::recording() const {
    intake::Recording r;
    r.media = std::filesystem::path(typed(media_));
    if (label_) r.details.label = typed(label_->GetValue());
    r.details.performer = typed(performer_->GetValue());
    r.details.source = typed(source_->GetValue());
    r.details.permission = typed(permission_->GetValue());
    r.carry = carry_->GetValue();
    const marks::Accompaniment voices[] = {marks::Accompaniment::find_out, marks::Accompaniment::alone,
                                           marks::Accompaniment::accompanied};
    r.listening.accompaniment = voices[voice_->GetSelection()];
    r.listening.partial = true; // said in the window's notice, rather than refused
    return r;
}

project::Piece RecordingDialog::piece() const {
    project::Piece piece;
    piece.title = typed(title_->GetValue());
    piece.writer = typed(writer_->GetValue());
    return piece;
}

std::filesystem::path RecordingDialog::project_file() const {
    std::filesystem::path file(typed(file_->GetValue()));
    if (file.extension() != ".luft") file += ".luft";
    return file;
}

} // namespace luft::desk
