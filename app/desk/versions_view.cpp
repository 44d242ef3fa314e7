#include "desk/versions_view.h"

#include "desk/text.h"

namespace luft::desk {
namespace {

using sheet::Which;

constexpr int kSide = 430;

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
        if (change.project) sound_.set({}, {});
        stale_ = stale_ || change.project || change.contents;
        if (IsShownOnScreen()) bring_up_to_date();
    });
}

void VersionsView::make_head(wxSizer& column) {
    auto* head = new wxBoxSizer(wxHORIZONTAL);
    const auto add = [&](wxWindow* window, int before) {
        head->Add(window, 0, wxALIGN_CENTRE_VERTICAL | wxLEFT, FromDIP(before));
    };
    for (const Which which : sheet::kBoth) {
        const std::size_t i = sheet::index_of(which);
        add(new wxStaticText(this, wxID_ANY, i == 0 ? "Above" : "Below"), i == 0 ? 12 : 14);
        names_[i] = new wxChoice(this, wxID_ANY, wxDefaultPosition, FromDIP(wxSize(220, -1)));
        names_[i]->SetToolTip(i == 0 ? "What the other one is held against" : "What differences are told of");
        names_[i]->Bind(wxEVT_CHOICE, [this, which](wxCommandEvent& event) {
            wishes_.guarded([&] {
                const auto one = static_cast<std::size_t>(event.GetInt());
                versions_.choose(which, session_.performances().at(one).id);
            });
            stale_ = true;
            bring_up_to_date();
            wishes_.done();
        });
        add(names_[i], 6);
    }
    swap_ = new wxButton(this, wxID_ANY, "Swap");
    swap_->SetToolTip(wxString(command(Do::swap_versions).help));
    swap_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
        wishes_.run(Do::swap_versions);
        wishes_.done();
    });
    add(swap_, 10);
    as_sung_ = new wxCheckBox(this, wxID_ANY, "As each sings  (G)");
    as_sung_->SetToolTip(wxString(command(Do::as_sung).help));
    as_sung_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent&) {
        show_as_sung();
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
    both_ = button(hear, Do::play_both, "Both  (Y)", 1);
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
        refresh_buttons();
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

} // namespace luft::desk
