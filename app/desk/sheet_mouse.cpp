// The mouse over the sheet: a click goes there and selects, a drag makes a moment or moves an edge.
#include "desk/sheet_drag.h"
#include "desk/sheet_view.h"
#include "desk/text.h"
#include "desk/work/sung_words.h"
#include "desk/work/told.h"

#include <algorithm>
#include <cmath>

namespace luft::desk {
namespace {

constexpr double kStill = 4; ///< units: a hand isn't perfectly still in a click
constexpr double kSnap = 7;  ///< units from a note's edge
constexpr Seconds kLeastSpan{0.05};

} // namespace

sheet::Point SheetView::on_sheet(const wxPoint& point) const {
    const wxPoint at = CalcUnscrolledPosition(point);
    return {static_cast<double>(at.x), static_cast<double>(at.y)};
}

Seconds SheetView::snapped(std::size_t row, double x) const {
    Seconds best = layout_->time_at(row, x);
    double nearest = kSnap;
    for (const auto* mark : layout_->rows()[row].notes)
        for (const Seconds edge : {mark->span().start, mark->span().end}) {
            const double off = std::abs(layout_->x_of(row, edge) - x);
            if (off < nearest) {
                nearest = off;
                best = edge;
            }
        }
    return best;
}

void SheetView::mouse(wxMouseEvent& event) {
    event.Skip();
    if (!layout_ || layout_->rows().empty()) return;
    const auto [x, y] = on_sheet(event.GetPosition());
    if (event.LeftDown()) {
        SetFocus();
        UnsetToolTip(); // it would lie over what is dragged
        told_.clear();
        press(x, y);
        if (!HasCapture()) CaptureMouse();
    } else if (event.LeftUp()) {
        if (HasCapture()) ReleaseMouse();
        release(x, y);
    } else if (event.LeftDClick()) {
        if (!std::holds_alternative<std::monostate>(session_.selection())) wishes_.edit();
    } else if (event.Dragging() && drag_) {
        drag_to(x, y);
    } else if (event.Moving()) {
        point_at(x, y);
    }
}

bool SheetView::gives_edge(const sheet::MarkHit& hit) const {
    if (session_.read_only() || hit.part == sheet::MarkHit::Part::body) return false;
    return hit.mark->kind() != project::MarkKind::note || mark_of(session_.selection()) == hit.mark->id;
}

void SheetView::press(double x, double y) {
    drag_ = std::make_unique<Drag>();
    drag_->row = layout_->row_under(y);
    drag_->x = x;
    drag_->time = layout_->time_at(drag_->row, x);
    drag_->span = {drag_->time, drag_->time};
    const auto found = sheet::hit(*layout_, x, y);
    const bool may_edit = !session_.read_only();
    if (const auto* mark = std::get_if<sheet::MarkHit>(&found)) {
        using Part = sheet::MarkHit::Part;
        const auto kind = mark->mark->kind();
        drag_->grabbed = mark->mark->id;
        drag_->before = mark->mark->span();
        const bool small = kind == project::MarkKind::breath || kind == project::MarkKind::register_switch;
        if (may_edit)
            drag_->what = small                       ? Drag::What::mark_whole
                          : !gives_edge(*mark)        ? Drag::What::span
                          : mark->part == Part::start ? Drag::What::mark_start
                                                      : Drag::What::mark_end;
    } else if (const auto* moment = std::get_if<sheet::MomentHit>(&found)) {
        using Part = sheet::MomentHit::Part;
        const auto& m = session_.source().moments[moment->moment];
        drag_->grabbed = m.id;
        drag_->before = m.span;
        if (may_edit && !moment->card)
            drag_->what = moment->part == Part::start ? Drag::What::moment_start
                          : moment->part == Part::end ? Drag::What::moment_end
                                                      : Drag::What::nothing;
    } else if (const auto* word = std::get_if<sheet::WordHit>(&found)) {
        drag_->word = word->word->id;
        drag_->before = {word->word->at, word->word->at};
        drag_->what = may_edit ? Drag::What::word : Drag::What::nothing;
    } else if (std::holds_alternative<sheet::PlaceHit>(found)) {
        drag_->what = may_edit ? Drag::What::span : Drag::What::nothing;
    }
}

void SheetView::drag_to(double x, double) {
    if (!drag_->moved && std::abs(x - drag_->x) < kStill) return;
    drag_->moved = true;
    const std::size_t row = drag_->row;
    const Seconds now = layout_->time_at(row, x), at = snapped(row, x);
    switch (drag_->what) {
    case Drag::What::span: {
        const Seconds from = snapped(row, drag_->x);
        drag_->span = {std::min(from, at), std::max(from, at)};
        break;
    }
    case Drag::What::mark_start:
    case Drag::What::moment_start:
        drag_->span = {std::min(now, drag_->before.end - kLeastSpan), drag_->before.end};
        break;
    case Drag::What::mark_end:
    case Drag::What::moment_end:
        drag_->span = {drag_->before.start, std::max(now, drag_->before.start + kLeastSpan)};
        break;
    case Drag::What::mark_whole: {
        const Seconds by = now - drag_->time;
        const Seconds start = std::max(Seconds(0), drag_->before.start + by);
        drag_->span = {start, start + drag_->before.length()};
        break;
    }
    case Drag::What::word: {
        const Span room = room_of_word(session_.source(), drag_->word);
        // The word is held where it was taken; its left edge is what counts.
        const double edge = layout_->x_of(row, drag_->before.start) + x - drag_->x;
        const Seconds there = std::clamp(snapped(row, edge), room.start, room.end);
        drag_->span = {there, there};
        break;
    }
    case Drag::What::nothing:
        break;
    }
    refresh_row(row);
}

void SheetView::release(double x, double y) {
    if (!drag_) return;
    // The last movements may not have been told one by one.
    if (std::abs(x - drag_->x) >= kStill) drag_to(x, y);
    const Drag done = *drag_;
    drag_.reset();
    Refresh();
    if (!done.moved) {
        session_.select(done.grabbed);
        if (x <= layout_->right_edge())
            wishes_.go_to(layout_->time_at(layout_->row_under(y), x));
        else if (const auto* moment = session_.selected_moment())
            wishes_.go_to(moment->span.start);
        return;
    }
    const auto mark = mark_of(done.grabbed);
    const auto moment = moment_of(done.grabbed);
    if (done.what == Drag::What::span && done.span.length() >= kLeastSpan) wishes_.make_moment(done.span);
    if (mark && (done.what == Drag::What::mark_start || done.what == Drag::What::mark_end ||
                 done.what == Drag::What::mark_whole))
        wishes_.move_mark(*mark, done.span);
    if (done.what == Drag::What::word) wishes_.move_word(done.word, done.span.start);
    if (moment && (done.what == Drag::What::moment_start || done.what == Drag::What::moment_end))
        wishes_.move_moment(*moment, done.span);
}

void SheetView::point_at(double x, double y) {
    const auto found = sheet::hit(*layout_, x, y);
    wxString words;
    wxStockCursor cursor = wxCURSOR_ARROW;
    if (const auto* mark = std::get_if<sheet::MarkHit>(&found)) {
        words = shown(told(session_.source(), *mark->mark));
        cursor = gives_edge(*mark) ? wxCURSOR_SIZEWE : wxCURSOR_HAND;
    } else if (const auto* moment = std::get_if<sheet::MomentHit>(&found)) {
        words = shown(told(session_.source(), session_.source().moments[moment->moment]));
        cursor = moment->part == sheet::MomentHit::Part::body ? wxCURSOR_HAND : wxCURSOR_SIZEWE;
    } else if (const auto* word = std::get_if<sheet::WordHit>(&found)) {
        words = word->word->placed ? "Placed by you; drag it along the line"
                                   : "Spread over the notes; drag it to where it is sung";
        cursor = wxCURSOR_SIZEWE;
    } else if (std::holds_alternative<sheet::PlaceHit>(found)) {
        cursor = wxCURSOR_IBEAM;
    }
    SetCursor(wxCursor(cursor));
    if (words == told_) return;
    told_ = words;
    words.empty() ? UnsetToolTip() : SetToolTip(words);
}

} // namespace luft::desk
