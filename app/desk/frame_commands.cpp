// What each command does.
#include "desk/frame.h"
#include "desk/key_chart.h"
#include "desk/text.h"
#include "desk/work/edits.h"
#include "desk/work/sung_words.h"

#include <wx/textctrl.h>

#include <iterator>

namespace luft::desk {
namespace {

/// Which moments the sheet shows; an empty function for all.
std::function<bool(const project::Moment&)> moment_filter(Do id) {
    using project::Moment;
    using project::Verdict;
    const auto of = [](Verdict verdict) {
        return [verdict](const Moment& m) { return m.verdict == verdict; };
    };
    switch (id) {
    case Do::kept_moments:
        return [](const Moment& m) { return m.state == project::MarkState::kept; };
    case Do::strength_moments:
        return of(Verdict::strength);
    case Do::watch_moments:
        return of(Verdict::watch);
    case Do::explain_moments:
        return of(Verdict::explain);
    default:
        return {};
    }
}

} // namespace

void Frame::guarded(const std::function<void()>& what) {
    try {
        what();
    } catch (const Error& error) {
        say(error);
    } catch (const std::exception& error) {
        say(std::string("Something went wrong that shouldn't have: ") + error.what(), wxICON_ERROR);
    }
}

void Frame::say(const std::string& words, int icon) {
    for (const int button : {wxID_FIND, wxID_FORWARD, wxID_CLOSE}) // of an earlier message
        if (notice_->HasButtonId(button)) notice_->RemoveButton(button);
    notice_->ShowMessage(shown(words), icon);
}

void Frame::say(const Error& error) {
    const std::string advice = error.advice().empty() ? "" : " " + error.advice();
    say(error.what() + advice, error.fault() == Fault::internal ? wxICON_ERROR : wxICON_WARNING);
}

void Frame::key(wxKeyEvent& event) {
    if (menu_open_) return event.Skip();
    wxWindow* focus = wxWindow::FindFocus();
    const bool writing = dynamic_cast<wxTextEntry*>(focus) != nullptr;
    if (wxGetTopLevelParent(focus ? focus : this) != this) return event.Skip(); // a dialog's own
    if (writing) {
        if (event.GetKeyCode() == WXK_ESCAPE) {
            side_->form().leave_shade();
            focus_page();
            return;
        }
        return event.Skip();
    }
    if (on_page(script_) && focus && script_->IsDescendant(focus) && !dynamic_cast<wxControl*>(focus) &&
        script_->key(event.GetKeyCode()))
        return;
    if (on_page(versions_) && focus && versions_->IsDescendant(focus) && !dynamic_cast<wxControl*>(focus) &&
        versions_->key(event.GetKeyCode()))
        return;
    if (on_page(rehearsal_)) { // its keys are its own
        if (event.HasModifiers() || !rehearsal_->key(event.GetKeyCode())) event.Skip();
        return;
    }
    const auto id = session_.is_open() ? command_of(event) : std::nullopt;
    // Lists and buttons keep the keys that they need.
    const bool own = dynamic_cast<wxControl*>(focus) != nullptr && focus != static_cast<wxWindow*>(profile_);
    if (!id || (own && (*id == Do::play_selection || *id == Do::previous_mark || *id == Do::next_mark)))
        return event.Skip();
    if (GetMenuBar()->IsEnabled(static_cast<int>(*id))) return run(*id);
    if (const std::string why = why_not(*id); !why.empty()) say(why);
}

void Frame::focus_page() {
    if (auto* page = book_->GetCurrentPage()) page->SetFocus();
}

std::string Frame::why_not(Do id) const {
    if (!session_.shows_performance()) return {};
    switch (id) {
    case Do::keep:
    case Do::drop:
    case Do::change_kind:
        if (session_.read_only()) break;
        return id == Do::change_kind ? "Select a breath, a switch or a note first: click on it."
                                     : "Select a mark or a moment first: click on it, or press N.";
    case Do::verdict_strength:
    case Do::verdict_watch:
    case Do::verdict_explain:
    case Do::add_shade:
    case Do::write_remark:
        if (session_.read_only()) break;
        return "Select a moment first, or make one: drag over the ribbon, or press M.";
    case Do::mend:
    case Do::halt_earlier:
    case Do::halt_later:
        if (session_.read_only()) break;
        return "That is done in the script: F9.";
    case Do::play_upper:
    case Do::play_lower:
    case Do::play_in_turn:
    case Do::play_both:
    case Do::pin_places:
    case Do::as_sung:
        if (!on_page(versions_)) return "That is done in Versions: F4.";
        if (std::string lacking = versions_->lacking(); !lacking.empty()) return lacking;
        break;
    case Do::make_moment:
        if (on_page(versions_) && !session_.read_only())
            return !versions_->lacking().empty()
                       ? versions_->lacking()
                       : "Select a difference first: click on its sign, or press the arrow keys.";
        break;
    case Do::set_breath:
    case Do::set_switch:
    case Do::make_stop:
    case Do::split_phrase:
    case Do::join_phrase:
    case Do::draft_script:
    case Do::add_aside:
    case Do::add_opening:
    case Do::add_closing:
    case Do::script_settings:
        break;
    default:
        return {};
    }
    return "This project can only be read here. Copy it to a folder of your own to work on it.";
}

void Frame::run(Do id) {
    const int number = static_cast<int>(id);
    if (number >= static_cast<int>(Do::first_recent) && number <= static_cast<int>(Do::last_recent)) {
        const auto index = static_cast<std::size_t>(number - static_cast<int>(Do::first_recent));
        if (index < recent_.GetCount()) open_project(recent_.GetHistoryFile(index));
        return;
    }
    if (number >= static_cast<int>(Do::first_facet) && number <= static_cast<int>(Do::last_facet)) {
        const auto index = static_cast<std::size_t>(number - static_cast<int>(Do::first_facet));
        if (session_.selected_moment())
            side_->form().begin_shade_of(session_.source().vocabulary.facets.at(index).key);
        else
            say("Select a moment first, or make one: then its shades can be set.");
        return;
    }
    guarded([&] {
        if (on_page(script_) && script_->run(id, playing_.position())) return;
        if (on_page(versions_) && versions_->run(id)) return;
        if (run_edit(id) || run_view(id)) return;
        switch (id) {
        case Do::new_recording:
            return ask_and(true);
        case Do::add_performance:
            return ask_and(false);
        case Do::write_report:
            return write_report();
        case Do::open_project: {
            wxFileDialog dialog(this, "Open a project", "", "", "Luftpause projects (*.luft)|*.luft",
                                wxFD_OPEN | wxFD_FILE_MUST_EXIST);
            if (dialog.ShowModal() == wxID_OK) open_project(dialog.GetPath());
            return;
        }
        case Do::open_sample:
            return open_sample();
        case Do::save_copy:
            return save_copy();
        case Do::close_project:
            return close_project();
        case Do::listen_again:
            if (session_.shown()) begin(Job::Again{*session_.shown(), marks::Accompaniment::find_out});
            return;
        case Do::print_sheet:
            return print_sheet();
        case Do::quit:
            Close();
            return;
        case Do::piece_notes:
            return edit_piece();
        case Do::write_files:
            return write_files();
        case Do::script_settings:
            return set_script_limits();
        case Do::rehearse:
        case Do::rehearse_from_here:
            return rehearse(id == Do::rehearse_from_here);
        case Do::vocabulary:
            return edit_vocabulary();
        case Do::find:
            return find_moment();
        case Do::key_chart:
            return show_key_chart(this);
        case Do::about:
            return about();
        case Do::save_still:
            return save_still();
        default:
            return play(id);
        }
    });
}

bool Frame::run_edit(Do id) {
    const Seconds here = playing_.position();
    switch (id) {
    case Do::undo:
        side_->form().store();
        script_->store();
        if (const auto label = session_.undo_label()) {
            session_.undo();
            transport_->show_note(shown("Undone: " + *label));
        }
        return true;
    case Do::redo:
        if (const auto label = session_.redo_label()) {
            session_.redo();
            transport_->show_note(shown("Done again: " + *label));
        }
        return true;
    case Do::keep:
        keep_or_drop(project::MarkState::kept);
        return true;
    case Do::drop:
        keep_or_drop(project::MarkState::dropped);
        return true;
    case Do::change_kind:
        change_kind(session_);
        return true;
    case Do::split_phrase:
        split_phrase(session_, here);
        return true;
    case Do::join_phrase:
        join_phrase(session_, here);
        return true;
    case Do::set_breath:
        luft::desk::set_breath(session_, here);
        return true;
    case Do::set_switch:
        luft::desk::set_switch(session_, here);
        return true;
    case Do::make_moment:
        luft::desk::make_moment(session_, moment_span(session_, here, playing_.playing()));
        return true;
    case Do::spread_words:
        luft::desk::spread_words(session_);
        return true;
    case Do::make_stop:
        luft::desk::make_stop(session_, here);
        say("The script has a stop here now: see Script, F9.");
        return true;
    case Do::draft_script:
    case Do::add_aside:
    case Do::add_opening:
    case Do::add_closing:
        show_page(Do::view_script);
        return script_->run(id, here);
    case Do::verdict_strength:
        set_verdict(session_, project::Verdict::strength);
        return true;
    case Do::verdict_watch:
        set_verdict(session_, project::Verdict::watch);
        return true;
    case Do::verdict_explain:
        set_verdict(session_, project::Verdict::explain);
        return true;
    case Do::add_shade:
        side_->form().begin_shade();
        return true;
    case Do::write_remark:
        if (session_.selected_moment()) side_->form().begin_remark();
        return true;
    default:
        return false;
    }
}

bool Frame::run_view(Do id) {
    switch (id) {
    case Do::next_proposal:
        review_next();
        return true;
    case Do::previous_mark:
    case Do::next_mark:
        select_and_reveal(neighbour(session_, playing_.position(), id == Do::next_mark));
        return true;
    case Do::deselect:
        if (playing_.playing()) play(Do::play);
        session_.select({});
        return true;
    case Do::review_by_time:
    case Do::review_unsure_first:
        order_ = id == Do::review_by_time ? ReviewOrder::by_time : ReviewOrder::unsure_first;
        return true;
    case Do::review_notes_too:
        review_notes_ = GetMenuBar()->IsChecked(static_cast<int>(id));
        side_->show_open(open_proposals(session_.source(), order_, review_notes_).size());
        return true;
    case Do::view_sheet:
    case Do::view_pages:
    case Do::view_profile:
    case Do::view_script:
    case Do::view_versions:
        show_page(id);
        return true;
    case Do::all_moments:
    case Do::kept_moments:
    case Do::strength_moments:
    case Do::watch_moments:
    case Do::explain_moments:
        sheet_->show_only(moment_filter(id));
        return true;
    case Do::zoom_in:
        sheet_->zoom(1.25);
        return true;
    case Do::zoom_out:
        sheet_->zoom(0.8);
        return true;
    case Do::zoom_fit:
        sheet_->zoom_fit();
        return true;
    case Do::taller:
        sheet_->stretch(1.25);
        return true;
    case Do::lower:
        sheet_->stretch(0.8);
        return true;
    case Do::picture:
        if (right_->IsSplit())
            right_->Unsplit(picture_);
        else {
            picture_->Show();
            right_->SplitHorizontally(picture_, side_, right_->GetClientSize().x * 9 / 16);
        }
        update_menus();
        return true;
    default:
        return false;
    }
}

} // namespace luft::desk
