#include "desk/vocabulary_dialog.h"

#include "desk/text.h"

#include <wx/textdlg.h>

namespace luft::desk {
namespace {

/// What a line of the tree stands for.
struct Stands : wxTreeItemData {
    Stands(std::string f, std::string s) : facet(std::move(f)), shade(std::move(s)) {}
    std::string facet, shade;
};

const char* basis_of(vocabulary::Basis basis) {
    switch (basis) {
    case vocabulary::Basis::measured:
        return "Luftpause measures this and proposes shades.";
    case vocabulary::Basis::hint:
        return "Sound only hints at this, and it is worded so.";
    case vocabulary::Basis::coach:
        break;
    }
    return "Sound doesn't show this: it is your judgement only.";
}

} // namespace

std::string key_of(const std::string& name) {
    std::string key;
    for (const char c : name) {
        const char low = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        if ((low >= 'a' && low <= 'z') || (!key.empty() && low >= '0' && low <= '9'))
            key += low;
        else if (!key.empty() && key.back() != '-')
            key += '-';
    }
    while (!key.empty() && key.back() == '-')
        key.pop_back();
    return key.substr(0, 40);
}

VocabularyDialog::VocabularyDialog(wxWindow* parent, Session& session,
                                   std::function<void(const std::function<void()>&)> guarded)
    : wxDialog(parent, wxID_ANY, "Tag vocabulary", wxDefaultPosition, parent->FromDIP(wxSize(640, 560)),
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER),
      session_(session), guarded_(std::move(guarded)) {
    auto* column = new wxBoxSizer(wxVERTICAL);
    tree_ =
        new wxTreeCtrl(this, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                       wxTR_HIDE_ROOT | wxTR_HAS_BUTTONS | wxTR_LINES_AT_ROOT | wxTR_NO_LINES | wxTR_SINGLE);
    column->Add(tree_, 1, wxEXPAND | wxALL, FromDIP(10));
    about_ =
        new wxStaticText(this, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(-1, 64)), wxST_NO_AUTORESIZE);
    column->Add(about_, 0, wxEXPAND | wxLEFT | wxRIGHT, FromDIP(12));
    auto* row = new wxBoxSizer(wxHORIZONTAL);
    auto* facet = new wxButton(this, wxID_ANY, shown("New facet…"));
    auto* shade = new wxButton(this, wxID_ANY, shown("New shade…"));
    facet->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { add_facet(); });
    shade->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { add_shade(); });
    for (auto* button : {facet, shade}) {
        button->Enable(!session_.read_only());
        row->Add(button, 0, wxRIGHT, FromDIP(6));
    }
    row->AddStretchSpacer();
    row->Add(new wxButton(this, wxID_CANCEL, "Close"));
    column->Add(row, 0, wxEXPAND | wxALL, FromDIP(10));
    SetSizer(column);
    tree_->Bind(wxEVT_TREE_SEL_CHANGED, [this](wxTreeEvent&) { tell(); });
    fill("");
    CentreOnParent();
}

void VocabularyDialog::fill(const std::string& open_facet) {
    tree_->DeleteAllItems();
    const auto root = tree_->AddRoot("");
    for (const auto& facet : session_.source().vocabulary.facets) {
        const auto item = tree_->AppendItem(root, shown(facet.name + (facet.own ? "  (yours)" : "")), -1, -1,
                                            new Stands(facet.key, ""));
        for (const auto& shade : facet.shades)
            tree_->AppendItem(item, shown(shade.name), -1, -1, new Stands(facet.key, shade.key));
        if (facet.key == open_facet) {
            tree_->Expand(item);
            tree_->SelectItem(item);
        }
    }
    tell();
}

std::string VocabularyDialog::chosen_facet() const {
    const auto item = tree_->GetSelection();
    const auto* stands = item.IsOk() ? dynamic_cast<Stands*>(tree_->GetItemData(item)) : nullptr;
    return stands ? stands->facet : "";
}

void VocabularyDialog::tell() {
    const auto item = tree_->GetSelection();
    const auto* stands = item.IsOk() ? dynamic_cast<Stands*>(tree_->GetItemData(item)) : nullptr;
    const auto& vocabulary = session_.source().vocabulary;
    std::string words = "Choose a facet or a shade to read what it means.";
    if (stands && stands->shade.empty()) {
        if (const auto* facet = vocabulary.facet(stands->facet))
            words = facet->description + "\n" + basis_of(facet->basis);
    } else if (stands) {
        if (const auto* shade = vocabulary.shade({stands->facet, stands->shade})) words = shade->description;
    }
    about_->SetLabelText(shown(words));
    about_->Wrap(std::max(200, GetClientSize().x - FromDIP(24)));
}

void VocabularyDialog::add_facet() {
    wxTextEntryDialog ask(this, "What do you call it? It stands for your own judgement.", "New facet");
    if (ask.ShowModal() != wxID_OK || ask.GetValue().empty()) return;
    vocabulary::Facet facet;
    facet.name = typed(ask.GetValue());
    facet.key = key_of(facet.name);
    facet.description = "Added by the coach.";
    facet.basis = vocabulary::Basis::coach;
    facet.own = true;
    guarded_([&] { session_.edit([&](project::Project& project) { project.add_facet(facet); }); });
    fill(facet.key);
}

void VocabularyDialog::add_shade() {
    const std::string facet = chosen_facet();
    if (facet.empty()) {
        about_->SetLabelText("Choose the facet that the new shade belongs to first.");
        return;
    }
    wxTextEntryDialog ask(this, "What do you call it?", "New shade");
    if (ask.ShowModal() != wxID_OK || ask.GetValue().empty()) return;
    vocabulary::Shade shade;
    shade.name = typed(ask.GetValue());
    shade.key = key_of(shade.name);
    shade.description = "Added by the coach.";
    guarded_([&] { session_.edit([&](project::Project& project) { project.add_shade(facet, shade); }); });
    fill(facet);
}

} // namespace luft::desk
