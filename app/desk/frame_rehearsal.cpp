// The rehearsal in the window: how it begins and ends.
#include "desk/frame.h"
#include "desk/text.h"

#include <algorithm>

namespace luft::desk {

void Frame::make_rehearsal() {
    rehearsal_ = new RehearsalView(
        book_, session_, sound_of(playing_),
        {[this] { show_page(Do::view_script); }, [this](const Error& error) { say(error); }});
    book_->AddPage(rehearsal_, "");
}

bool Frame::may_leave() {
    side_->form().store();
    script_->store();
    return may_leave_rehearsal();
}

bool Frame::may_leave_rehearsal() {
    if (!rehearsal_->has_times()) return true;
    wxMessageDialog ask(this, "Keep the times of this rehearsal?", "Rehearsal",
                        wxYES_NO | wxCANCEL | wxICON_QUESTION);
    ask.SetYesNoLabels("Keep", "Discard");
    const int answer = ask.ShowModal();
    if (answer == wxID_YES) rehearsal_->keep(); // what goes wrong is said, and the times stay
    if (answer == wxID_NO) rehearsal_->abandon();
    return !rehearsal_->has_times();
}

void Frame::rehearse(bool from_selected) {
    if (on_page(versions_)) leave_versions();
    if (rehearsal_->busy() && !on_page(rehearsal_) && !from_selected) { // it was left in the middle
        show_side(false);
        show_around(false);
        book_->SetSelection(static_cast<std::size_t>(book_->FindPage(rehearsal_)));
        rehearsal_->SetFocus();
        return;
    }
    if (!may_leave_rehearsal()) return;
    script_->store();
    script_->bring_up_to_date();
    const auto& segments = script_->sheet().segments;
    if (std::ranges::none_of(segments, [](const auto& s) { return s.kind == script::SegmentKind::talk; }))
        throw Error(Fault::bad_request, "There is nothing to rehearse yet: the script has no talk.",
                    "Draft it from the kept moments (Ctrl+D), or put in stops (S).");
    std::size_t step = 0;
    if (from_selected && script_->selected()) {
        const auto talk = std::ranges::find_if(segments, [&](const auto& s) {
            return s.item == script_->selected() && s.kind == script::SegmentKind::talk;
        });
        if (talk != segments.end()) step = static_cast<std::size_t>(talk - segments.begin());
        if (step > 0 && segments[step - 1].kind == script::SegmentKind::play) --step;
    }
    if (playing_.playing()) playing_.pause();
    if (playing_.loop()) play(Do::loop);
    playing_.set_tone(ToneKind::off, session_);
    GetMenuBar()->Check(static_cast<int>(Do::tone_off), true);
    notice_->Dismiss();
    show_side(false);
    show_around(false);
    book_->SetSelection(static_cast<std::size_t>(book_->FindPage(rehearsal_)));
    rehearsal_->begin(script_->sheet(), step);
    update_menus();
}

void Frame::show_around(bool wanted) {
    head_->Show(wanted);
    transport_->Show(wanted);
    Layout();
}

} // namespace luft::desk
