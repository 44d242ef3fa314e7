// What the page of two performances shows.
#include "base/text.h"
#include "desk/text.h"
#include "desk/versions_view.h"

namespace luft::desk {
namespace {

using sheet::Which;

wxString named(const project::Performance& one) {
    return shown(one.label + (one.performer.empty() ? "" : ":  " + one.performer));
}

} // namespace

void VersionsView::bring_up_to_date() {
    if (stale_) {
        stale_ = false;
        refresh_names();
        wishes_.guarded([&] {
            if (const auto task = versions_.wanted()) wishes_.begin(*task);
        });
    }
    refresh();
}

void VersionsView::take(std::shared_ptr<const Matched> matched) {
    versions_.take(std::move(matched));
    stale_ = true; // it may be out of date already
    if (IsShownOnScreen()) bring_up_to_date();
}

void VersionsView::not_done(const Job::Match& work, const std::string& why) {
    versions_.not_done(work, why);
    refresh();
}

void VersionsView::refresh_names() {
    for (const Which which : sheet::kBoth) {
        wxChoice* const choice = names_[sheet::index_of(which)];
        choice->Clear();
        for (const auto& one : session_.performances()) {
            choice->Append(named(one));
            if (versions_.possible() && one.id == versions_.performance(which).id)
                choice->SetSelection(static_cast<int>(choice->GetCount()) - 1);
        }
        choice->Enable(versions_.possible());
    }
    if (versions_.possible())
        sound_.set(versions_.performance(Which::a), versions_.performance(Which::b));
    else
        sound_.set({}, {});
}

void VersionsView::refresh() {
    shown_ = versions_.shared();
    std::vector<compare::Pair> pins;
    wxArrayString words;
    for (const auto& pin : versions_.pins()) {
        pins.push_back({pin.a, pin.b});
        words.Add(shown(clock_text(pin.a) + "  with  " + clock_text(pin.b)));
    }
    if (words != pins_->GetStrings()) {
        const wxString selected = pins_->GetStringSelection();
        pins_->Set(words);
        if (!selected.empty()) pins_->SetStringSelection(selected);
    }
    sound_.set_together(shown_, !as_sung_->GetValue());
    sheet_->show(shown_, pins);
    sheet_->set_places({versions_.place(Which::a), versions_.place(Which::b)});
    list_->show(shown_, versions_.listed());
    note_->SetLabelText(shown(versions_.note()));
    note_->SetToolTip(note_->GetLabelText());
    say_when_empty();
    show_selected(false);
}

void VersionsView::say_when_empty() {
    sheet_->say_when_empty(
        !versions_.possible()          ? "There is only one performance of this piece yet.\n"
                                         "File, Add a performance brings in another one."
        : !versions_.why_not().empty() ? shown(versions_.why_not()) + "\n\nPress F4 to compare again."
        : !shown_ ? wxString("The two lines appear here as soon as they have been compared.")
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
    for (const auto& [one, id] :
         {std::pair(upper_, Do::play_upper), std::pair(lower_, Do::play_lower),
          std::pair(in_turn_, Do::play_in_turn), std::pair(both_, Do::play_both),
          std::pair(moment_, Do::make_moment), std::pair(moment_other_, Do::moment_other),
          std::pair(pin_, Do::pin_places), std::pair(unpin_, Do::unpin), std::pair(swap_, Do::swap_versions)})
        one->Enable(can(id));
    wishes_.changed();
}

void VersionsView::show_selected(bool reveal) {
    sheet_->select(versions_.selected());
    list_->select(versions_.selected());
    if (reveal && versions_.selected()) sheet_->reveal(*versions_.selected());
    refresh_buttons();
}

void VersionsView::show_as_sung() {
    sound_.set_together(shown_, !as_sung_->GetValue());
    sheet_->show_as_sung(as_sung_->GetValue());
}

void VersionsView::renew() {
    sheet_->renew();
    list_->Refresh();
}

} // namespace luft::desk
