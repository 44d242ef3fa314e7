#include "desk/side_panel.h"

#include "base/text.h"
#include "desk/text.h"
#include "desk/work/told.h"
#include "sheet/layout.h"

namespace luft::desk {
namespace {

const char* const kNothing =
    "Click on the sheet to hear it from there and to select what stands there. Drag over the ribbon "
    "to make a moment. Press N to go through the proposals, F1 for all keys.";

wxString when(Span span) {
    const std::string start = clock_text(span.start);
    return shown(span.length() > Seconds(0) ? start + " to " + clock_text(span.end) : start);
}

} // namespace

SidePanel::SidePanel(wxWindow* parent, Session& session, std::function<void(Do)> run,
                     std::function<void(const std::function<void()>&)> guarded)
    : wxScrolledWindow(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL), session_(session),
      run_(std::move(run)) {
    SetScrollRate(0, 12);
    auto* column = new wxBoxSizer(wxVERTICAL);
    const int edge = FromDIP(12);
    const auto button = [&](wxSizer* into, Do id, const wxString& words) {
        auto* one = new wxButton(this, wxID_ANY, words, wxDefaultPosition, FromDIP(wxSize(86, -1)));
        one->SetToolTip(wxString(command(id).help));
        one->Bind(wxEVT_BUTTON, [this, id](wxCommandEvent&) { run_(id); });
        into->Add(one, 0, wxRIGHT, FromDIP(6));
        return one;
    };
    auto* review = new wxBoxSizer(wxHORIZONTAL);
    open_ = new wxStaticText(this, wxID_ANY, "");
    review->Add(open_, 1, wxALIGN_CENTRE_VERTICAL);
    button(review, Do::next_proposal, "Next  (N)");
    column->Add(review, 0, wxEXPAND | wxALL, edge);
    column->Add(new wxStaticLine(this, wxID_ANY), 0, wxEXPAND | wxLEFT | wxRIGHT, edge);

    title_ = new wxStaticText(this, wxID_ANY, "");
    wxFont large = title_->GetFont();
    large.SetFractionalPointSize(large.GetFractionalPointSize() * 1.2);
    title_->SetFont(large.Bold());
    column->Add(title_, 0, wxEXPAND | wxLEFT | wxRIGHT | wxTOP, edge);
    when_ = new wxStaticText(this, wxID_ANY, "");
    column->Add(when_, 0, wxEXPAND | wxLEFT | wxRIGHT | wxTOP, edge / 2);
    state_ = new wxStaticText(this, wxID_ANY, "");
    column->Add(state_, 0, wxEXPAND | wxLEFT | wxRIGHT, edge / 2);
    column->GetItem(when_)->SetBorder(edge);
    column->GetItem(state_)->SetBorder(edge);
    auto* buttons = new wxBoxSizer(wxHORIZONTAL);
    keep_ = button(buttons, Do::keep, "Keep  (K)");
    drop_ = button(buttons, Do::drop, "Drop  (Del)");
    change_ = button(buttons, Do::change_kind, "Kind  (C)");
    column->Add(buttons, 0, wxLEFT | wxRIGHT | wxTOP, edge);
    form_ = new MomentForm(this, session_, std::move(guarded));
    column->Add(form_, 0, wxEXPAND | wxLEFT | wxRIGHT | wxTOP, edge);
    facts_ = new wxStaticText(this, wxID_ANY, "");
    column->Add(facts_, 0, wxEXPAND | wxALL, edge);
    SetSizer(column);
    session_.watch([this](const Session::Change&) { refresh(); });
    Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
        event.Skip();
        CallAfter([this] { refresh(); });
    });
    refresh();
}

void SidePanel::show_open(std::size_t count) {
    open_->SetLabel(count == 0   ? wxString("No open proposals")
                    : count == 1 ? wxString("1 open proposal")
                                 : wxString::Format("%zu open proposals", count));
}

void SidePanel::set_lines(const std::vector<std::string>& lines) {
    std::string text;
    for (const auto& line : lines)
        text += (text.empty() ? "" : "\n") + line;
    facts_->SetLabelText(shown(text));
}

void SidePanel::refresh() {
    const auto* mark = session_.selected_mark();
    const auto* moment = session_.selected_moment();
    const bool any = mark || moment;
    for (wxWindow* part : {static_cast<wxWindow*>(when_), static_cast<wxWindow*>(state_),
                           static_cast<wxWindow*>(keep_), static_cast<wxWindow*>(drop_)})
        part->Show(any);
    if (moment)
        form_->Show();
    else if (form_->IsShown())
        form_->close();
    change_->Show(mark && mark->kind() != project::MarkKind::phrase);
    for (wxWindow* part : {drop_, change_})
        part->Enable(!session_.read_only());
    if (mark) {
        title_->SetLabelText(shown(title_of(session_.source(), *mark)));
        when_->SetLabelText(when(mark->span()));
        state_->SetLabelText(shown(state_of(*mark)));
        keep_->Enable(mark->state != project::MarkState::kept && !session_.read_only());
        set_lines(facts_of(*mark));
    } else if (moment) {
        title_->SetLabelText("Moment");
        when_->SetLabelText(when(moment->span));
        state_->SetLabelText(shown(state_of(*moment)));
        keep_->Enable(moment->state != project::MarkState::kept && !session_.read_only());
        form_->Enable(!session_.read_only());
        form_->show(*moment);
        auto lines = facts_of(session_.source(), moment->span);
        if (!moment->evidence.empty()) lines.insert(lines.begin(), moment->evidence);
        lines.insert(lines.begin(), "Measured there:");
        set_lines(lines);
    } else {
        title_->SetLabelText(session_.shows_performance() ? "Nothing selected" : "");
        set_lines({session_.shows_performance() ? kNothing : ""});
    }
    const int width = GetClientSize().x - FromDIP(26);
    if (width > 60) {
        facts_->Wrap(width);
        title_->Wrap(width);
    }
    Layout();
    FitInside();
}

} // namespace luft::desk
