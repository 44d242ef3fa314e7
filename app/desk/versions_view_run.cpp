// What the commands do on the page of two performances.
#include "desk/text.h"
#include "desk/versions_view.h"

#include <algorithm>

namespace luft::desk {
namespace {

using sheet::Which;

constexpr Seconds kLittle{1};

} // namespace

bool VersionsView::can(Do id) const {
    const bool found = versions_.result() != nullptr;
    const bool writable = session_.is_open() && !session_.read_only();
    switch (id) {
    case Do::make_moment:
    case Do::moment_other:
        return found && writable && versions_.selected().has_value();
    case Do::pin_places:
        return found && writable;
    case Do::unpin:
        return writable && pins_->GetSelection() != wxNOT_FOUND;
    case Do::drop:
        return can(Do::unpin);
    case Do::swap_versions:
        return versions_.possible();
    default:
        return found;
    }
}

bool VersionsView::run(Do id) {
    switch (id) {
    case Do::play_upper:
        play(versions_.turn(Which::a));
        return true;
    case Do::play_lower:
        play(versions_.turn(Which::b));
        return true;
    case Do::play_in_turn:
    case Do::play_selection:
        play(versions_.in_turn());
        return true;
    case Do::play_both:
        play(versions_.both());
        return true;
    case Do::play:
        play_or_pause();
        return true;
    case Do::back:
    case Do::forward:
        if (const auto which = sound_.which())
            sound_.play_from(session_.project(), *which,
                             std::max(Seconds(0), sound_.position() + (id == Do::back ? -kLittle : kLittle)));
        return true;
    case Do::previous_mark:
    case Do::next_mark:
        versions_.step(id == Do::next_mark);
        show_selected(true);
        return true;
    case Do::deselect:
        sound_.pause();
        select(std::nullopt);
        return true;
    case Do::make_moment:
        make_moment(versions_.looked_at());
        return true;
    case Do::moment_other:
        make_moment(other_of(versions_.looked_at()));
        return true;
    case Do::pin_places:
        versions_.pin_places();
        wishes_.say("Pinned: the two are compared anew around it.");
        return true;
    case Do::unpin:
    case Do::drop:
        if (pins_->GetSelection() != wxNOT_FOUND)
            versions_.remove_pin(static_cast<std::size_t>(pins_->GetSelection()));
        return true;
    case Do::swap_versions:
        versions_.swap();
        stale_ = true;
        bring_up_to_date();
        return true;
    case Do::as_sung:
        as_sung_->SetValue(!as_sung_->GetValue());
        show_as_sung();
        return true;
    case Do::differences_by_time:
    case Do::differences_telling:
        versions_.set_order(id == Do::differences_by_time ? DifferenceOrder::by_time
                                                          : DifferenceOrder::most_telling);
        order_->SetSelection(id == Do::differences_by_time ? 0 : 1);
        list_->show(shown_, versions_.listed());
        list_->select(versions_.selected());
        return true;
    case Do::view_versions: // again: what was stopped is done anew
        if (!versions_.why_not().empty())
            if (const auto task = versions_.wanted(true)) wishes_.begin(*task);
        return false; // and the page is shown, if it isn't
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
    default:
        return false;
    }
}

bool VersionsView::key(int code) {
    if (versions_.listed().empty() || (code != WXK_UP && code != WXK_DOWN)) return false;
    versions_.step(code == WXK_DOWN);
    show_selected(true);
    return true;
}

void VersionsView::select(std::optional<std::size_t> difference) {
    versions_.select(difference);
    show_selected(true);
}

void VersionsView::set_place(Which which, Seconds own) {
    wishes_.guarded([&] {
        versions_.set_place(which, own);
        sheet_->set_places({versions_.place(Which::a), versions_.place(Which::b)});
        if (sound_.playing())
            sound_.play_from(session_.project(), which, *versions_.place(which));
        else
            sound_.stop(); // Space plays from here, not where it was paused
    });
    refresh_buttons();
}

void VersionsView::make_moment(Which in) {
    versions_.make_moment(in);
    wishes_.say("A moment in " + versions_.performance(in).label + ", with " +
                versions_.performance(other_of(in)).label + " beside it: write about it on the sheet, F5.");
}

void VersionsView::play(std::deque<Turn> turns) {
    sound_.start(session_.project(), std::move(turns));
    wishes_.say(sound_.note());
}

void VersionsView::play_or_pause() {
    if (sound_.playing()) return sound_.pause();
    if (sound_.resume()) return;
    const Which which = versions_.looked_at();
    if (const auto place = versions_.place(which)) return sound_.play_from(session_.project(), which, *place);
    play(versions_.turn(which));
}

void VersionsView::tick() {
    if (!versions_.possible() || !session_.is_open()) return;
    wishes_.guarded([&] { sound_.look(session_.project()); });
    PairSheet::Times times;
    if (const auto which = sound_.which()) {
        const std::size_t i = sheet::index_of(*which);
        times[i] = sound_.position();
        times[1 - i] = versions_.counterpart(*which, sound_.position());
    }
    // What is heard around a difference can reach onto the next row, and the difference is to stay in sight.
    sheet_->set_playheads(times, sound_.playing() && !(sound_.in_turns() && versions_.selected()));
}

Seconds VersionsView::position() const {
    return sound_.which() ? sound_.position() : versions_.place(versions_.looked_at()).value_or(Seconds(0));
}

Seconds VersionsView::duration() const {
    return versions_.possible() ? versions_.performance(heard_last()).facts.duration : Seconds(0);
}

} // namespace luft::desk
