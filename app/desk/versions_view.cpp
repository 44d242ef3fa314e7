#include "desk/versions_view.h"

#include "base/text.h"
#include "desk/text.h"

namespace luft::desk {
namespace {

using sheet::Which;

constexpr int kSide = 400;

wxString named(const project::Performance& one) {
    return shown(one.label + (one.performer.empty() ? "" : ":  " + one.performer));
}

} // namespace

VersionsView::VersionsView(wxWindow* parent, Session& session, Playing& playing, Wishes wishes)
    : wxPanel(parent, wxID_ANY), session_(session), wishes_(std::move(wishes)), versions_(session),
      sound_(playing) {
    auto* column = new wxBoxSizer(wxVERTICAL);
    make_head(*column);
    auto* row = new wxBoxSizer(wxHORIZONTAL);
    sheet_ = new PairSheet(this, {[this](std::size_t difference) { select(difference); },
                                  [this](Which which, Seconds own) { set_place(which, own); },
                                  [this] { wishes_.run(Do::play_in_turn); }});
    row->Add(sheet_, 1, wxEXPAND);
    row->Add(make_side(), 0, wxEXPAND);
    column->Add(row, 1, wxEXPAND);
    SetSizer(column);
    session_.watch([this](const Session::Change& change) {
        if (change.project) {
            sound_.set({}, {});
            why_not_.clear();
        }
        stale_ = stale_ || change.project || change.contents;
        if (IsShownOnScreen()) bring_up_to_date();
    });
}

void VersionsView::make_head(wxSizer& column) {
    auto* head = new wxBoxSizer(wxHORIZONTAL);
    const auto add = [&](wxWindow* window, int before) {
        head->Add(window, 0, wxALIGN_CENTRE_VERTICAL | wxLEFT, FromDIP(before));
    };
    for (const Which which : {Which::a, Which::b}) {
        const std::size_t i = which == Which::b;
        add(new wxStaticText(this, wxID_ANY, i == 0 ? "Above" : "Below"), i == 0 ? 12 : 14);
        names_[i] = new wxChoice(this, wxID_ANY, wxDefaultPosition, FromDIP(wxSize(220, -1)));
        names_[i]->SetToolTip(i == 0 ? "What the other one is held against" : "What differences are told of");
        names_[i]->Bind(wxEVT_CHOICE, [this, which](wxCommandEvent& event) {
            versions_.choose(which, session_.performances().at(static_cast<std::size_t>(event.GetInt())).id);
            stale_ = true;
            bring_up_to_date();
            wishes_.done();
        });
        add(names_[i], 6);
    }
    auto* swap = new wxButton(this, wxID_ANY, "Swap");
    swap->SetToolTip(wxString(command(Do::swap_versions).help));
    swap->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { wishes_.run(Do::swap_versions); });
    add(swap, 10);
    as_sung_ = new wxCheckBox(this, wxID_ANY, "As each sings  (G)");
    as_sung_->SetToolTip(wxString(command(Do::as_sung).help));
    as_sung_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent&) {
        sheet_->show_as_sung(as_sung_->GetValue());
        wishes_.changed();
        wishes_.done();
    });
    add(as_sung_, 14);
    note_ = new wxStaticText(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_ELLIPSIZE_END);
    head->Add(note_, 1, wxALIGN_CENTRE_VERTICAL | wxLEFT | wxRIGHT, FromDIP(14));
    column.Add(head, 0, wxEXPAND | wxTOP | wxBOTTOM, FromDIP(6));
}

wxWindow* VersionsView::make_side() {
    auto* side = new wxPanel(this, wxID_ANY, wxDefaultPosition, FromDIP(wxSize(kSide, -1)));
    auto* column = new wxBoxSizer(wxVERTICAL);
    const int edge = FromDIP(8);
    const auto button = [&](wxSizer* into, Do id, const wxString& words, int share) {
        auto* one = new wxButton(side, wxID_ANY, words);
        one->SetToolTip(wxString(command(id).help));
        one->Bind(wxEVT_BUTTON, [this, id](wxCommandEvent&) {
            wishes_.run(id);
            wishes_.done();
        });
        into->Add(one, share, wxEXPAND | (share > 0 && into->GetItemCount() > 0 ? wxLEFT : 0), FromDIP(5));
        return one;
    };
    auto* head = new wxBoxSizer(wxHORIZONTAL);
    head->Add(new wxStaticText(side, wxID_ANY, "Differences"), 1, wxALIGN_CENTRE_VERTICAL);
    const wxString orders[] = {"In order of time", "Most telling first"};
    order_ = new wxChoice(side, wxID_ANY, wxDefaultPosition, wxDefaultSize, 2, orders);
    order_->SetSelection(0);
    order_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        wishes_.run(event.GetInt() == 0 ? Do::differences_by_time : Do::differences_telling);
        wishes_.done();
    });
    head->Add(order_, 0, wxALIGN_CENTRE_VERTICAL);
    column->Add(head, 0, wxEXPAND | wxLEFT | wxRIGHT | wxBOTTOM, edge);
    list_ = new DifferenceList(side, {[this](std::size_t difference) { select(difference); },
                                      [this] { wishes_.run(Do::play_in_turn); }});
    column->Add(list_, 1, wxEXPAND);
    auto* hear = new wxBoxSizer(wxHORIZONTAL);
    upper_ = button(hear, Do::play_upper, "Upper  (U)", 1);
    lower_ = button(hear, Do::play_lower, "Lower  (I)", 1);
    in_turn_ = button(hear, Do::play_in_turn, "In turn  (O)", 1);
    column->Add(hear, 0, wxEXPAND | wxLEFT | wxRIGHT | wxTOP, edge);
    auto* moments = new wxBoxSizer(wxHORIZONTAL);
    moment_ = button(moments, Do::make_moment, "Moment", 1);
    moment_other_ = button(moments, Do::moment_other, "Moment", 1);
    column->Add(moments, 0, wxEXPAND | wxLEFT | wxRIGHT | wxTOP, edge);
    column->Add(new wxStaticText(side, wxID_ANY, "Pins: places that belong together, as you say"), 0,
                wxLEFT | wxTOP, edge);
    auto* pins = new wxBoxSizer(wxHORIZONTAL);
    pins_ = new wxListBox(side, wxID_ANY, wxDefaultPosition, FromDIP(wxSize(-1, 64)));
    pins_->Bind(wxEVT_LISTBOX, [this](wxCommandEvent& event) {
        const auto& all = versions_.pins();
        if (event.GetInt() >= 0 && static_cast<std::size_t>(event.GetInt()) < all.size())
            sheet_->reveal(Which::a, all[static_cast<std::size_t>(event.GetInt())].a);
        wishes_.changed();
    });
    pins->Add(pins_, 1, wxEXPAND | wxRIGHT, FromDIP(5));
    auto* two = new wxBoxSizer(wxVERTICAL);
    pin_ = button(two, Do::pin_places, "Pin both places  (X)", 0);
    unpin_ = button(two, Do::unpin, "Remove the pin", 0);
    pins->Add(two, 0);
    column->Add(pins, 0, wxEXPAND | wxLEFT | wxRIGHT | wxBOTTOM, edge);
    side->SetSizer(column);
    return side;
}

void VersionsView::bring_up_to_date() {
    if (stale_) {
        stale_ = false;
        refresh_names();
        wishes_.guarded([&] {
            if (const auto task = versions_.wanted()) {
                why_not_.clear();
                wishes_.begin(*task);
            }
        });
    }
    refresh();
}

void VersionsView::take(std::shared_ptr<const Matched> matched) {
    versions_.take(std::move(matched));
    stale_ = true; // it may be out of date already
    if (IsShownOnScreen()) bring_up_to_date();
}

void VersionsView::not_done(const std::string& why) {
    if (!versions_.waits()) return;
    versions_.stopped();
    why_not_ = why;
    refresh();
}

void VersionsView::refresh_names() {
    for (const Which which : {Which::a, Which::b}) {
        wxChoice* const choice = names_[which == Which::b];
        choice->Clear();
        for (const auto& one : session_.performances()) {
            choice->Append(named(one));
            if (versions_.possible() && one.id == versions_.performance(which).id)
                choice->SetSelection(static_cast<int>(choice->GetCount()) - 1);
        }
        choice->Enable(versions_.possible());
    }
    if (!versions_.possible()) return;
    sound_.set(versions_.performance(Which::a), versions_.performance(Which::b));
}

void VersionsView::refresh() {
    shown_ = versions_.shared();
    std::vector<compare::Pair> pins;
    wxArrayString words;
    for (const auto& pin : versions_.pins()) {
        pins.push_back({pin.a, pin.b});
        words.Add(shown(clock_text(pin.a) + "  with  " + clock_text(pin.b)));
    }
    pins_->Set(words);
    sheet_->show(shown_, pins);
    sheet_->set_places({versions_.place(Which::a), versions_.place(Which::b)});
    list_->show(shown_, versions_.listed());
    note_->SetLabelText(shown_ ? shown(shown_->note) : wxString());
    note_->SetToolTip(note_->GetLabelText());
    say_when_empty();
    show_selected(false);
}

void VersionsView::say_when_empty() {
    sheet_->say_when_empty(!versions_.possible() ? "There is only one performance of this piece yet.\n"
                                                   "File, Add a performance brings in another one."
                           : !why_not_.empty()   ? shown(why_not_) + "\n\nPress F4 to compare again."
                           : !shown_
                               ? wxString("The two lines appear here as soon as they have been compared.")
                               : wxString("The two have no lines that could be shown."));
}

void VersionsView::refresh_buttons() {
    if (versions_.possible()) {
        const wxString a = shown(versions_.performance(Which::a).label),
                       b = shown(versions_.performance(Which::b).label);
        const bool above = versions_.looked_at() == Which::a;
        moment_->SetLabelText("Moment in " + (above ? a : b) + "  (M)");
        moment_other_->SetLabelText("Moment in " + (above ? b : a));
    }
    for (const auto& [one, id] : {std::pair(upper_, Do::play_upper), std::pair(lower_, Do::play_lower),
                                  std::pair(in_turn_, Do::play_in_turn), std::pair(moment_, Do::make_moment),
                                  std::pair(moment_other_, Do::moment_other), std::pair(pin_, Do::pin_places),
                                  std::pair(unpin_, Do::unpin)})
        one->Enable(can(id));
    wishes_.changed();
}

void VersionsView::show_selected(bool reveal) {
    sheet_->select(versions_.selected());
    list_->select(versions_.selected());
    if (reveal && versions_.selected()) sheet_->reveal(*versions_.selected());
    refresh_buttons();
}

void VersionsView::renew() {
    sheet_->renew();
    list_->Refresh();
}

} // namespace luft::desk
