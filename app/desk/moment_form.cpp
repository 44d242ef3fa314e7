#include "desk/moment_form.h"

#include "desk/text.h"
#include "desk/work/told.h"

#include <algorithm>

namespace luft::desk {
namespace {

constexpr int kInset = 15;   ///< tenths of a millimetre
constexpr int kPause = 1200; ///< ms without a key: the remark is stored
constexpr std::size_t kMostRecent = 8;
const std::vector<vocabulary::Tag> kNone;

} // namespace

MomentForm::MomentForm(wxWindow* parent, Session& session,
                       std::function<void(const std::function<void()>&)> guarded)
    : wxPanel(parent, wxID_ANY), session_(session), guarded_(std::move(guarded)), pause_(this) {
    auto* column = new wxBoxSizer(wxVERTICAL);
    const auto label = [&](const wxString& words) {
        column->Add(new wxStaticText(this, wxID_ANY, words), 0, wxTOP | wxBOTTOM, FromDIP(3));
    };
    const wxString verdicts[] = {"strength", "watch", "explain"};
    verdict_ = new wxRadioBox(this, wxID_ANY, "Verdict  (1, 2, 3)", wxDefaultPosition, wxDefaultSize, 3,
                              verdicts, 3);
    column->Add(verdict_, 0, wxEXPAND);
    label("Shades");
    shades_ = new wxBoxSizer(wxVERTICAL);
    column->Add(shades_, 0, wxEXPAND);
    shade_ = new wxTextCtrl(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxTE_PROCESS_ENTER);
    shade_->SetHint("Add a shade: type a few letters  (T)");
    column->Add(shade_, 0, wxEXPAND | wxTOP, FromDIP(2));
    offers_ = new wxListBox(this, wxID_ANY, wxDefaultPosition, FromDIP(wxSize(-1, 110)));
    column->Add(offers_, 0, wxEXPAND);
    offers_->Hide();
    no_offer_ = new wxStaticText(this, wxID_ANY, "No shade of that name");
    no_offer_->SetToolTip("Edit, Tag vocabulary adds your own");
    column->Add(no_offer_, 0, wxTOP, FromDIP(3));
    no_offer_->Hide();
    label("Remark, in your words  (E)");
    remark_ = new wxTextCtrl(this, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(-1, 96)), wxTE_MULTILINE);
    wxTextAttr inset; // else a space past a line's end pushes all words aside
    inset.SetLeftIndent(kInset);
    inset.SetRightIndent(kInset);
    remark_->SetDefaultStyle(inset);
    column->Add(remark_, 0, wxEXPAND);
    label("Drill");
    drill_ = new wxChoice(this, wxID_ANY);
    column->Add(drill_, 0, wxEXPAND);
    beside_ = new wxPanel(this);
    auto* beside = new wxBoxSizer(wxVERTICAL);
    beside->Add(new wxStaticText(beside_, wxID_ANY, "Heard beside it"), 0, wxTOP | wxBOTTOM, FromDIP(3));
    auto* line = new wxBoxSizer(wxHORIZONTAL);
    beside_words_ =
        new wxStaticText(beside_, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_ELLIPSIZE_END);
    auto* off = new wxButton(beside_, wxID_ANY, "Remove", wxDefaultPosition, FromDIP(wxSize(76, -1)));
    off->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
        CallAfter([this] { change([](project::Moment& m) { m.beside.reset(); }); });
    });
    line->Add(beside_words_, 1, wxALIGN_CENTRE_VERTICAL);
    line->Add(off, 0, wxLEFT, FromDIP(6));
    beside->Add(line, 0, wxEXPAND);
    beside_->SetSizer(beside);
    column->Add(beside_, 0, wxEXPAND);
    SetSizer(column);

    verdict_->Bind(wxEVT_RADIOBOX, [this](wxCommandEvent& event) {
        change([&](project::Moment& m) { m.verdict = static_cast<project::Verdict>(event.GetInt()); });
    });
    drill_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        change([&](project::Moment& m) { m.drill = drills_.at(static_cast<std::size_t>(event.GetInt())); });
    });
    shade_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { offer(); });
    shade_->Bind(wxEVT_TEXT_ENTER, [this](wxCommandEvent&) {
        take_offer(static_cast<std::size_t>(std::max(0, offers_->GetSelection())));
    });
    shade_->Bind(wxEVT_KEY_DOWN, [this](wxKeyEvent& event) {
        const int at = offers_->GetSelection(), count = static_cast<int>(offers_->GetCount());
        if (event.GetKeyCode() == WXK_DOWN && count > 0)
            offers_->SetSelection(std::min(at + 1, count - 1));
        else if (event.GetKeyCode() == WXK_UP && count > 0)
            offers_->SetSelection(std::max(at - 1, 0));
        else if (!facet_.empty() && shade_->IsEmpty() && event.GetKeyCode() > '0' &&
                 event.GetKeyCode() <= '9')
            take_offer(static_cast<std::size_t>(event.GetKeyCode() - '1'));
        else
            event.Skip();
    });
    offers_->Bind(wxEVT_LISTBOX_DCLICK,
                  [this](wxCommandEvent& event) { take_offer(static_cast<std::size_t>(event.GetInt())); });
    offers_->Bind(wxEVT_LISTBOX, [this](wxCommandEvent& event) {
        // A click takes it; the arrow keys move the selection without this event.
        take_offer(static_cast<std::size_t>(event.GetInt()));
    });
    remark_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) {
        if (!filling_) pause_.StartOnce(kPause);
    });
    remark_->Bind(wxEVT_KILL_FOCUS, [this](wxFocusEvent& event) {
        event.Skip();
        CallAfter([this] { store(); });
    });
    Bind(wxEVT_TIMER, [this](wxTimerEvent&) { store(); });
}

void MomentForm::change(const std::function<void(project::Moment&)>& how) {
    if (!moment_ || filling_) return;
    const auto* now = session_.moment(*moment_);
    if (!now) return;
    project::Moment changed = *now;
    how(changed);
    guarded_([&] { session_.edit([&](project::Project& project) { project.change_moment(changed); }); });
}

void MomentForm::store() {
    pause_.Stop();
    const std::string words = typed(remark_->GetValue());
    if (!moment_ || words == shown_remark_) return;
    const std::string before = std::exchange(shown_remark_, words);
    change([&](project::Moment& m) { m.remark = words; });
    const auto* now = session_.moment(*moment_);
    if (now && now->remark != words) shown_remark_ = before; // it couldn't be stored: it is tried again
}

void MomentForm::show(const project::Moment& moment) {
    if (moment_ != moment.id) {
        store();
        leave_shade();
        shown_shades_ = {{"?", "?"}};
    }
    filling_ = true;
    const bool other = moment_ != moment.id;
    moment_ = moment.id;
    verdict_->SetSelection(static_cast<int>(moment.verdict));
    // What is being written isn't disturbed by what happens beside it.
    const bool unsaved = remark_->HasFocus() && typed(remark_->GetValue()) != shown_remark_;
    if (other || (!unsaved && moment.remark != shown_remark_)) {
        remark_->ChangeValue(shown(moment.remark));
        shown_remark_ = moment.remark;
    }
    if (other || moment.shades != shown_shades_) {
        show_shades(moment);
        show_drills(moment);
    }
    const auto at = std::ranges::find(drills_, moment.drill);
    drill_->SetSelection(at == drills_.end() ? 0 : static_cast<int>(at - drills_.begin()));
    show_beside(moment);
    filling_ = false;
}

void MomentForm::show_shades(const project::Moment& moment) {
    shown_shades_ = moment.shades;
    shades_->Clear(true);
    for (const auto& tag : moment.shades) {
        auto* line = new wxBoxSizer(wxHORIZONTAL);
        const auto* facet = session_.source().vocabulary.facet(tag.facet);
        const auto* shade = session_.source().vocabulary.shade(tag);
        auto* words = new wxStaticText(
            this, wxID_ANY,
            shown((facet ? facet->name : tag.facet) + ": " + (shade ? shade->name : tag.shade)),
            wxDefaultPosition, wxDefaultSize, wxST_ELLIPSIZE_END);
        if (shade) words->SetToolTip(shown(shade->description));
        auto* off = new wxButton(this, wxID_ANY, "Remove", wxDefaultPosition, FromDIP(wxSize(76, -1)));
        off->Bind(wxEVT_BUTTON, [this, tag](wxCommandEvent&) {
            CallAfter([this, tag] { change([&](project::Moment& m) { std::erase(m.shades, tag); }); });
        });
        line->Add(words, 1, wxALIGN_CENTRE_VERTICAL);
        line->Add(off, 0, wxLEFT, FromDIP(6));
        shades_->Add(line, 0, wxEXPAND | wxBOTTOM, FromDIP(2));
    }
    GetParent()->Layout();
    if (auto* scrolled = dynamic_cast<wxScrolledWindow*>(GetParent())) scrolled->FitInside();
}

void MomentForm::show_beside(const project::Moment& moment) {
    const bool any = moment.beside.has_value();
    if (any) {
        beside_words_->SetLabelText(shown(told(session_.performances(), *moment.beside)));
        beside_words_->SetToolTip(beside_words_->GetLabelText());
    }
    if (beside_->IsShown() == any) return;
    beside_->Show(any);
    GetParent()->Layout();
    if (auto* scrolled = dynamic_cast<wxScrolledWindow*>(GetParent())) scrolled->FitInside();
}

void MomentForm::show_drills(const project::Moment& moment) {
    drills_ = {""};
    drill_->Clear();
    drill_->Append("none");
    const auto& vocabulary = session_.source().vocabulary;
    const auto add = [&](const vocabulary::Drill& drill) {
        if (std::ranges::find(drills_, drill.key) != drills_.end()) return;
        drills_.push_back(drill.key);
        drill_->Append(shown(drill.title));
    };
    for (const auto& tag : moment.shades)
        for (const auto* drill : vocabulary.drills_for(tag))
            add(*drill);
    for (const auto& drill : vocabulary.drills)
        add(drill);
}

void MomentForm::offer() {
    offered_ = find_shades(session_.source().vocabulary, typed(shade_->GetValue()),
                           facet_.empty() ? recent_ : kNone);
    if (!facet_.empty())
        std::erase_if(offered_, [this](const ShadeOffer& one) { return one.tag.facet != facet_; });
    wxArrayString words;
    for (const auto& one : offered_)
        words.Add((facet_.empty() ? wxString() : wxString::Format("%zu   ", words.size() + 1)) +
                  shown(one.words));
    offers_->Set(words);
    if (!words.empty()) offers_->SetSelection(0);
    const bool asked = !shade_->IsEmpty() || !facet_.empty();
    show_offers(asked && !words.empty(), asked && words.empty());
}

void MomentForm::show_offers(bool any, bool none) {
    if (offers_->IsShown() == any && no_offer_->IsShown() == none) return;
    offers_->Show(any);
    no_offer_->Show(none);
    GetParent()->Layout();
    if (auto* scrolled = dynamic_cast<wxScrolledWindow*>(GetParent())) scrolled->FitInside();
}

void MomentForm::close() {
    wxWindow* const focus = FindFocus();
    const bool held_keys = focus && IsDescendant(focus);
    leave_shade();
    Hide();
    // Keys would go nowhere, were they left with a field that is hidden.
    if (held_keys && done_) done_();
}

void MomentForm::leave_shade() {
    facet_.clear();
    shade_->ChangeValue("");
    show_offers(false, false);
}

void MomentForm::take_offer(std::size_t index) {
    if (index >= offered_.size()) return;
    const vocabulary::Tag tag = offered_[index].tag;
    std::erase(recent_, tag);
    recent_.insert(recent_.begin(), tag);
    if (recent_.size() > kMostRecent) recent_.pop_back();
    // After this event: the list that sent it is about to be hidden.
    CallAfter([this, tag] {
        leave_shade();
        change([&](project::Moment& m) {
            if (std::ranges::find(m.shades, tag) == m.shades.end()) m.shades.push_back(tag);
        });
        if (done_) done_();
    });
}

void MomentForm::begin_shade() {
    leave_shade();
    shade_->SetFocus();
}

void MomentForm::begin_shade_of(const std::string& facet) {
    begin_shade();
    facet_ = facet;
    offer();
}

void MomentForm::begin_remark() {
    remark_->SetFocus();
    remark_->SetInsertionPointEnd();
}

} // namespace luft::desk
