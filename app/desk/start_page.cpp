#include "desk/start_page.h"

#include <wx/filename.h>

namespace luft::desk {
namespace {

constexpr int kWidth = 560;

wxStaticText* text(wxWindow* parent, const wxString& words, double size, bool bold = false) {
    auto* label = new wxStaticText(parent, wxID_ANY, words);
    wxFont font = label->GetFont();
    font.SetFractionalPointSize(font.GetFractionalPointSize() * size);
    if (bold) font.MakeBold();
    label->SetFont(font);
    label->Wrap(parent->FromDIP(kWidth));
    return label;
}

} // namespace

StartPage::StartPage(wxWindow* parent, std::function<void(Do)> run)
    : wxPanel(parent, wxID_ANY), run_(std::move(run)), recent_(new wxBoxSizer(wxVERTICAL)) {
    auto* column = new wxBoxSizer(wxVERTICAL);
    column->Add(text(this, "Luftpause", 2.2, true), 0, wxBOTTOM, FromDIP(6));
    column->Add(
        text(
            this,
            "Bring in a recorded performance. Luftpause listens to it and sets it out as a song sheet: every "
            "phrase a line, with its breaths, switches of register and notes. You keep what is right, mark "
            "the moments you want to speak about; from them come a technique profile, a script to "
            "rehearse, and the files that the edit of your video needs.",
            1.1),
        0, wxBOTTOM, FromDIP(22));
    auto* ways = new wxFlexGridSizer(2, FromDIP(wxSize(16, 10)));
    const auto way = [&](Do id, const wxString& words, const wxString& help) {
        auto* button = new wxButton(this, wxID_ANY, words, wxDefaultPosition, FromDIP(wxSize(200, 40)));
        button->Bind(wxEVT_BUTTON, [this, id](wxCommandEvent&) { run_(id); });
        ways->Add(button);
        ways->Add(new wxStaticText(this, wxID_ANY, help), 0, wxALIGN_CENTRE_VERTICAL);
    };
    way(Do::new_recording, "New from a recording", "A video or sound file; or drop one on this window");
    way(Do::open_project, "Open a project", "Go on where you left off: nothing needs to be saved");
    way(Do::open_sample, "Look at the sample", "A copy of an invented song in two invented performances");
    column->Add(ways);
    column->Add(recent_, 0, wxTOP, FromDIP(10));
    column->Add(text(this,
                     "Luftpause estimates from sound and diagnoses nothing; hoarseness that lasts belongs to "
                     "a doctor. "
                     "Whether you may quote a recording is for you to settle under the law where you are.",
                     0.9),
                0, wxTOP, FromDIP(26));
    auto* middle = new wxBoxSizer(wxHORIZONTAL);
    middle->AddStretchSpacer();
    middle->Add(column, 0, wxALIGN_CENTRE_VERTICAL);
    middle->AddStretchSpacer();
    SetSizer(middle);
}

void StartPage::show_recent(const std::vector<wxString>& files) {
    recent_->Clear(true);
    if (!files.empty()) recent_->Add(text(this, "Open again", 1.0, true), 0, wxBOTTOM, FromDIP(4));
    int id = static_cast<int>(Do::first_recent);
    for (const auto& file : files) {
        const wxFileName name(file);
        auto* button = new wxButton(this, wxID_ANY, name.GetName() + "   in   " + name.GetPath(),
                                    wxDefaultPosition, wxDefaultSize, wxBU_LEFT | wxBORDER_NONE);
        button->Enable(name.FileExists());
        button->Bind(wxEVT_BUTTON, [this, id](wxCommandEvent&) { run_(static_cast<Do>(id)); });
        recent_->Add(button, 0, wxEXPAND);
        if (++id > static_cast<int>(Do::last_recent)) break;
    }
    Layout();
}

} // namespace luft::desk
