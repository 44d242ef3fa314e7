#include "desk/pair_sheet.h"

#include "desk/text.h"
#include "desk/wheel.h"

#include <algorithm>

namespace luft::desk {
namespace {

using sheet::index_of;
using sheet::kBoth;
using sheet::Which;

constexpr double kSemitone = 6;

} // namespace

PairSheet::PairSheet(wxWindow* parent, Wishes wishes)
    : wxScrolled<wxWindow>(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL | wxWANTS_CHARS),
      wishes_(std::move(wishes)), measuring_(sheet::Canvas::picture(1, 1)) {
    view_.semitone = kSemitone;
    SetBackgroundStyle(wxBG_STYLE_PAINT);
    SetScrollRate(0, 1);
    ShowScrollbars(wxSHOW_SB_NEVER, wxSHOW_SB_ALWAYS);
    Bind(wxEVT_PAINT, &PairSheet::paint, this);
    Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
        event.Skip();
        if (GetClientSize().x != static_cast<int>(view_.width)) lay_out();
    });
    Bind(wxEVT_MOUSEWHEEL, [this](wxMouseEvent& event) {
        if (event.GetWheelAxis() != wxMOUSE_WHEEL_VERTICAL || event.ControlDown()) return event.Skip();
        scroll_by_wheel(*this, event);
    });
    for (const auto& type : {wxEVT_LEFT_DOWN, wxEVT_LEFT_DCLICK, wxEVT_MOTION})
        Bind(type, &PairSheet::mouse, this);
}

void PairSheet::show(std::shared_ptr<const Matched> matched, std::vector<compare::Pair> pins) {
    const bool other = !matched || !matched_ || matched->comparison.a.id != matched_->comparison.a.id ||
                       matched->comparison.b.id != matched_->comparison.b.id;
    layout_.reset(); // it points into what goes
    matched_ = std::move(matched);
    pins_ = std::move(pins);
    if (other) Scroll(0, 0);
    lay_out();
}

void PairSheet::show_as_sung(bool as_sung) {
    if (std::exchange(view_.as_sung, as_sung) != as_sung) lay_out();
}

void PairSheet::lay_out() {
    const wxSize size = GetClientSize();
    pictures_.clear();
    layout_.reset();
    if (matched_ && size.x >= 50) {
        const auto source = matched_->pair(pins_);
        view_.width = size.x;
        if (fitted_) view_.per_second = sheet::pair_fitting_scale(source, view_.width);
        layout_ = std::make_unique<sheet::PairLayout>(source, view_, sheet::letters_of(measuring_));
        pictures_.resize(layout_->rows().size() + 1);
    }
    SetVirtualSize(size.x, layout_ ? static_cast<int>(layout_->height()) : 0);
    Refresh();
}

void PairSheet::refresh_row(std::optional<std::size_t> row) {
    if (!layout_ || !row || *row >= layout_->places().size()) return;
    const auto& place = layout_->places()[*row];
    const wxPoint at = CalcScrolledPosition({0, static_cast<int>(place.top)});
    RefreshRect({0, at.y, GetClientSize().x, static_cast<int>(place.height) + 1}, false);
}

void PairSheet::refresh_times(const Times& times) {
    if (!layout_) return;
    for (const Which which : kBoth)
        if (const auto at = times[index_of(which)]) refresh_row(layout_->row_of(which, *at));
}

void PairSheet::select(std::optional<std::size_t> difference) {
    if (difference == selected_ || !layout_) {
        selected_ = difference;
        return;
    }
    const auto& all = matched_->comparison.differences;
    for (const auto one : {selected_, difference})
        if (one && *one < all.size())
            if (const auto row = layout_->row_of(all[*one])) {
                pictures_[*row + 1] = wxBitmap();
                refresh_row(row);
            }
    selected_ = difference;
}

void PairSheet::set_playheads(const Times& times, bool follow) {
    if (times == playheads_) return;
    refresh_times(playheads_);
    const Times before = std::exchange(playheads_, times);
    refresh_times(playheads_);
    if (!follow || !layout_) return;
    for (const Which which : kBoth) {
        const auto now = times[index_of(which)], then = before[index_of(which)];
        if (now && (!then || layout_->row_of(which, *now) != layout_->row_of(which, *then)))
            return reveal(which, *now);
    }
}

void PairSheet::set_places(const Times& places) {
    refresh_times(places_);
    places_ = places;
    refresh_times(places_);
}

void PairSheet::reveal_row(std::optional<std::size_t> row) {
    if (!row) return;
    const auto& place = layout_->places()[*row];
    const int top = CalcUnscrolledPosition({0, 0}).y, height = GetClientSize().y;
    if (place.top >= top && place.top + place.height <= top + height) return;
    Scroll(0, std::max(0, static_cast<int>(place.top) -
                              std::max(0, height - static_cast<int>(place.height)) / 3));
}

void PairSheet::reveal(std::size_t difference) {
    if (layout_ && difference < matched_->comparison.differences.size())
        reveal_row(layout_->row_of(matched_->comparison.differences[difference]));
}

void PairSheet::reveal(Which which, Seconds own) {
    if (layout_) reveal_row(layout_->row_of(which, own));
}

void PairSheet::zoom(double factor) {
    fitted_ = false;
    view_.per_second = std::clamp(view_.per_second * factor, 30.0, 600.0);
    lay_out();
}

void PairSheet::zoom_fit() {
    fitted_ = true;
    view_.semitone = kSemitone;
    lay_out();
}

void PairSheet::stretch(double factor) {
    view_.semitone = std::clamp(view_.semitone * factor, 4.0, 24.0);
    lay_out();
}

void PairSheet::renew() {
    lay_out();
}

void PairSheet::say_when_empty(const wxString& words) {
    if (words == empty_) return;
    empty_ = words;
    if (!layout_ || layout_->rows().empty()) Refresh();
}

void PairSheet::mouse(wxMouseEvent& event) {
    event.Skip();
    if (!layout_) return;
    const wxPoint at = CalcUnscrolledPosition(event.GetPosition());
    const auto hit = sheet::pair_hit(*layout_, at.x, at.y);
    const auto* sign = std::get_if<sheet::SignHit>(&hit);
    if (event.LeftDown()) {
        SetFocus();
        if (sign) wishes_.select(sign->difference);
        if (const auto* line = std::get_if<sheet::LineHit>(&hit)) wishes_.place(line->which, line->time);
    } else if (event.LeftDClick()) {
        wishes_.play();
    } else if (event.Moving()) {
        const wxString words =
            sign ? shown(matched_->comparison.differences[sign->difference].sentence) : wxString();
        if (words == told_) return;
        told_ = words;
        words.empty() ? UnsetToolTip() : SetToolTip(words);
    }
}

} // namespace luft::desk
