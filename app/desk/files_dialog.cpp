#include "desk/files_dialog.h"

#include "desk/text.h"
#include "files/formats.h"

#include <wx/config.h>

namespace luft::desk {
namespace {

const char* const kLeftOut = "/files/left-out"; ///< keys, each with a space after it

std::string sentence(std::string_view words) {
    std::string text(words);
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

} // namespace

FilesDialog::FilesDialog(wxWindow* parent, const std::filesystem::path& project)
    : wxDialog(parent, wxID_ANY, "Files for the edit", wxDefaultPosition, wxDefaultSize,
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER) {
    auto* column = new wxBoxSizer(wxVERTICAL);
    const auto label = [&](const wxString& words) {
        column->Add(new wxStaticText(this, wxID_ANY, words), 0, wxLEFT | wxRIGHT | wxTOP, FromDIP(16));
    };
    label("Into the folder (it is made when it isn't there; files of the same name are replaced)");
    const auto beside =
        std::filesystem::absolute(project).parent_path() / (project.stem().string() + "-edit");
    folder_ =
        new wxDirPickerCtrl(this, wxID_ANY, shown(beside.string()), "Folder for the files", wxDefaultPosition,
                            FromDIP(wxSize(560, -1)), wxDIRP_USE_TEXTCTRL | wxDIRP_SMALL);
    folder_->SetPath(shown(beside.string()));
    column->Add(folder_, 0, wxEXPAND | wxLEFT | wxRIGHT | wxTOP, FromDIP(16));
    label("These");
    wxArrayString lines;
    for (const auto& format : files::formats())
        lines.Add(shown(sentence(format.help)));
    list_ = new wxCheckListBox(this, wxID_ANY, wxDefaultPosition, FromDIP(wxSize(560, 380)), lines);
    const std::string left_out = typed(wxConfigBase::Get()->Read(kLeftOut, ""));
    for (unsigned i = 0; i < list_->GetCount(); ++i)
        list_->Check(i, left_out.find(std::string(files::formats()[i].key) + " ") == std::string::npos);
    column->Add(list_, 1, wxEXPAND | wxLEFT | wxRIGHT | wxTOP, FromDIP(16));
    auto* buttons = new wxBoxSizer(wxHORIZONTAL);
    for (const bool all : {true, false}) {
        auto* button = new wxButton(this, wxID_ANY, all ? "All" : "None");
        button->Bind(wxEVT_BUTTON, [this, all](wxCommandEvent&) {
            for (unsigned i = 0; i < list_->GetCount(); ++i)
                list_->Check(i, all);
        });
        buttons->Add(button, 0, wxRIGHT, FromDIP(6));
    }
    column->Add(buttons, 0, wxLEFT | wxRIGHT | wxTOP, FromDIP(16));
    auto* answer = CreateButtonSizer(wxOK | wxCANCEL);
    if (auto* ok = FindWindow(wxID_OK)) ok->SetLabel("Write");
    column->Add(answer, 0, wxEXPAND | wxALL, FromDIP(12));
    SetSizerAndFit(column);
    CentreOnParent();
}

std::filesystem::path FilesDialog::folder() const {
    return typed(folder_->GetPath());
}

std::set<std::string, std::less<>> FilesDialog::formats() const {
    std::set<std::string, std::less<>> keys;
    for (unsigned i = 0; i < list_->GetCount(); ++i)
        if (list_->IsChecked(i)) keys.emplace(files::formats()[i].key);
    return keys;
}

void FilesDialog::remember() const {
    std::string left_out;
    for (unsigned i = 0; i < list_->GetCount(); ++i)
        if (!list_->IsChecked(i)) left_out += std::string(files::formats()[i].key) + " ";
    wxConfigBase::Get()->Write(kLeftOut, shown(left_out));
}

} // namespace luft::desk
