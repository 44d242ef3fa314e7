#include "desk/sheet_view.h"

#include "desk/bitmap.h"
#include "desk/sheet_drag.h"
#include "desk/text.h"
#include "desk/wheel.h"
#include "sheet/measures.h"

#include <wx/dcbuffer.h>
#include <wx/graphics.h>
#include <wx/settings.h>

#include <algorithm>
#include <chrono>
#include <cmath>

namespace luft::desk {
namespace {

constexpr double kMargin = 250, kNarrowMargin = 210, kSmallMargin = 160; ///< for the cards
constexpr int kNarrow = 1000, kSmall = 620; ///< below these widths the cards take less
constexpr double kLegendGap = 18;
constexpr std::size_t kMostPictures = 120; ///< rows kept drawn

} // namespace

sheet::Colours system_colours() {
    return wxSystemSettings::GetAppearance().IsDark() ? sheet::dark_colours() : sheet::light_colours();
}

wxColour to_wx(sheet::Colour c) {
    return {c.red, c.green, c.blue, static_cast<unsigned char>(std::lround(c.cover * 255))};
}

SheetView::SheetView(wxWindow* parent, Session& session, Wishes wishes)
    : wxScrolled<wxWindow>(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL | wxWANTS_CHARS),
      session_(session), wishes_(std::move(wishes)), measuring_(sheet::Canvas::picture(1, 1)),
      widths_(measuring_), heights_(measuring_) {
    SetBackgroundStyle(wxBG_STYLE_PAINT);
    SetScrollRate(0, 1);
    ShowScrollbars(wxSHOW_SB_NEVER, wxSHOW_SB_ALWAYS);
    Bind(wxEVT_PAINT, &SheetView::paint, this);
    Bind(wxEVT_SIZE, &SheetView::on_size, this);
    Bind(wxEVT_MOUSEWHEEL, [this](wxMouseEvent& event) {
        // By itself a notch would scroll three units.
        if (event.GetWheelAxis() != wxMOUSE_WHEEL_VERTICAL || event.ControlDown()) return event.Skip();
        scroll_by_wheel(*this, event);
    });
    for (const auto& type :
         {wxEVT_LEFT_DOWN, wxEVT_LEFT_UP, wxEVT_LEFT_DCLICK, wxEVT_MOTION, wxEVT_LEAVE_WINDOW})
        Bind(type, &SheetView::mouse, this);
    // Between the window's other work, so that scrolling finds the next rows drawn already.
    Bind(wxEVT_IDLE, [this](wxIdleEvent& event) {
        event.Skip();
        if (draw_ahead()) event.RequestMore();
    });
    Bind(wxEVT_MOUSE_CAPTURE_LOST, [this](wxMouseCaptureLostEvent&) {
        drag_.reset();
        Refresh();
    });
    session_.watch([this](const Session::Change& change) { watch(change); });
}

void SheetView::watch(const Session::Change& change) {
    if (change.project || change.shown) {
        playhead_ = Seconds(0);
        fitted_ = true;
        Scroll(0, 0);
    }
    if (change.project || change.shown || change.contents) return lay_out();
    if (change.selection && layout_) {
        // Only what is or was selected looks different; finding those rows costs more than drawing a
        // screenful.
        forget_rows();
        Refresh();
    }
}

void SheetView::renew() {
    legend_ = wxBitmap();
    lay_out();
}

void SheetView::on_size(wxSizeEvent& event) {
    event.Skip();
    if (GetClientSize().x != static_cast<int>(view_.width)) lay_out();
}

void SheetView::lay_out() {
    const wxSize size = GetClientSize();
    if (size.x < 50) return;
    view_.width = size.x;
    view_.margin = session_.source().moments.empty() ? 40
                   : size.x < kSmall                 ? kSmallMargin
                   : size.x < kNarrow                ? kNarrowMargin
                                                     : kMargin;
    if (fitted_) view_.per_second = sheet::fitting_scale(session_.source(), view_.width, view_.margin);
    layout_ = std::make_unique<sheet::Layout>(
        session_.source(), view_,
        [this](double width, std::string_view words, sheet::Type type, int most) {
            return heights_.of(width, words, type, most);
        },
        [this](std::string_view word) { return widths_.of(word); });
    forget_rows();
    legend_ = wxBitmap();
    sheet::Canvas aside = sheet::Canvas::picture(1, 1);
    legend_height_ = sheet::draw_legend(aside, 0, 0, view_.width - 24, system_colours());
    SetVirtualSize(size.x, static_cast<int>(layout_->height() + legend_height_ + 2 * kLegendGap));
    Refresh();
}

void SheetView::forget_rows() {
    rows_.assign(layout_ ? layout_->rows().size() : 0, wxBitmap());
    drawn_ = 0;
}

sheet::Look SheetView::look() const {
    return {system_colours(), mark_of(session_.selection()), moment_of(session_.selection())};
}

const wxBitmap& SheetView::row_picture(std::size_t row) {
    if (rows_[row].IsOk()) return rows_[row];
    if (++drawn_ > kMostPictures) {
        // Those far from here go; what is near is soon wanted again.
        drawn_ = 0;
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            if (i + kMostPictures / 3 < row || i > row + kMostPictures / 3) rows_[i] = wxBitmap();
            drawn_ += rows_[i].IsOk();
        }
    }
    const double scale = GetContentScaleFactor();
    sheet::Canvas canvas = sheet::Canvas::picture(static_cast<int>(view_.width),
                                                  static_cast<int>(layout_->places()[row].height), scale);
    const sheet::Look how = look();
    canvas.clear(how.colours.paper);
    sheet::draw_row(canvas, *layout_, row, how);
    rows_[row] = bitmap_of(canvas, scale);
    return rows_[row];
}

const wxBitmap& SheetView::legend_picture() {
    if (legend_.IsOk()) return legend_;
    const double scale = GetContentScaleFactor();
    const int height = static_cast<int>(legend_height_ + 2 * kLegendGap);
    sheet::Canvas canvas = sheet::Canvas::picture(static_cast<int>(view_.width), height, scale);
    canvas.clear(system_colours().paper);
    canvas.line(12, kLegendGap / 2, view_.width - 12, kLegendGap / 2, system_colours().rule, 1);
    sheet::draw_legend(canvas, 12, kLegendGap, view_.width - 24, system_colours());
    legend_ = bitmap_of(canvas, scale);
    return legend_;
}

bool SheetView::draw_ahead() {
    if (!layout_ || !IsShownOnScreen()) return false;
    const auto& places = layout_->places();
    const int top = CalcUnscrolledPosition({0, 0}).y, height = GetClientSize().y;
    const std::size_t first = layout_->row_under(top - height / 2.0),
                      last = layout_->row_under(top + 2 * height);
    for (std::size_t row = first; row <= last && row < places.size(); ++row)
        if (!rows_[row].IsOk()) {
            row_picture(row);
            return true;
        }
    return false;
}

void SheetView::paint(wxPaintEvent&) {
    wxPaintDC dc(this);
    DoPrepareDC(dc);
    const wxSize size = GetClientSize();
    const int top = CalcUnscrolledPosition({0, 0}).y, bottom = top + size.y;
    dc.SetPen(*wxTRANSPARENT_PEN);
    dc.SetBrush(wxBrush(to_wx(system_colours().paper)));
    dc.DrawRectangle(0, top, size.x, size.y);
    if (!layout_ || layout_->rows().empty()) {
        dc.SetTextForeground(to_wx(system_colours().soft));
        dc.DrawLabel(session_.is_open() ? empty_ : wxString(), wxRect(0, top, size.x, size.y * 2 / 3),
                     wxALIGN_CENTRE);
        return;
    }
    const auto& places = layout_->places();
    for (std::size_t row = layout_->row_under(top); row < places.size() && places[row].top < bottom; ++row)
        dc.DrawBitmap(row_picture(row), 0, static_cast<int>(places[row].top));
    if (!places.empty() && layout_->height() < bottom)
        dc.DrawBitmap(legend_picture(), 0, static_cast<int>(layout_->height()));
    draw_overlays(dc);
}

void SheetView::draw_overlays(wxDC& dc) {
    if (layout_->rows().empty()) return;
    const auto colours = system_colours();
    const std::size_t row = layout_->row_of(playhead_);
    const auto& place = layout_->places()[row];
    const int x = static_cast<int>(layout_->x_of(row, playhead_));
    dc.SetPen(wxPen(to_wx(colours.playhead), 2));
    dc.DrawLine(x, static_cast<int>(place.top + place.staff_top - sheet::kAbove / 2), x,
                static_cast<int>(place.top + place.staff_bottom));
    if (!drag_ || !drag_->moved) return;
    const auto& dragged = layout_->places()[drag_->row];
    const double left = layout_->x_of(drag_->row, drag_->span.start);
    const double right = layout_->x_of(drag_->row, drag_->span.end);
    dc.SetPen(wxPen(to_wx(colours.ink), 1, wxPENSTYLE_SHORT_DASH));
    dc.SetBrush(*wxTRANSPARENT_BRUSH);
    dc.DrawRectangle(static_cast<int>(left), static_cast<int>(dragged.top + dragged.staff_top - 2),
                     std::max(2, static_cast<int>(right - left)),
                     static_cast<int>(dragged.staff_bottom - dragged.staff_top + 4));
}

void SheetView::refresh_row(std::size_t row) {
    if (!layout_ || row >= layout_->places().size()) return;
    const auto& place = layout_->places()[row];
    const wxPoint at = CalcScrolledPosition({0, static_cast<int>(place.top)});
    RefreshRect({0, at.y, GetClientSize().x, static_cast<int>(place.height) + 1}, false);
}

void SheetView::refresh_playhead(Seconds time) {
    if (!layout_ || layout_->rows().empty()) return;
    const std::size_t row = layout_->row_of(time);
    const auto& place = layout_->places()[row];
    const wxPoint at =
        CalcScrolledPosition({static_cast<int>(layout_->x_of(row, time)) - 3, static_cast<int>(place.top)});
    RefreshRect({at.x, at.y, 7, static_cast<int>(place.height) + 1}, false);
}

void SheetView::set_playhead(Seconds time, bool playing) {
    if (time == playhead_ && playing == playing_) return;
    const Seconds before = playhead_;
    refresh_playhead(before);
    playhead_ = time;
    playing_ = playing;
    refresh_playhead(time);
    if (playing && layout_ && !layout_->rows().empty() && layout_->row_of(before) != layout_->row_of(time))
        reveal(time);
}

void SheetView::reveal(Seconds time) {
    if (!layout_ || layout_->rows().empty()) return;
    const auto& place = layout_->places()[layout_->row_of(time)];
    const int top = CalcUnscrolledPosition({0, 0}).y, height = GetClientSize().y;
    if (place.top >= top && place.top + place.height <= top + height) return;
    Scroll(0, std::max(0, static_cast<int>(place.top) - height / 4));
}

void SheetView::say_when_empty(const wxString& words) {
    if (words == empty_) return;
    empty_ = words;
    if (!layout_ || layout_->rows().empty()) Refresh();
}

void SheetView::show_only(std::function<bool(const project::Moment&)> wanted) {
    view_.wanted = std::move(wanted);
    lay_out();
    reveal(playhead_);
}

void SheetView::zoom(double factor) {
    fitted_ = false;
    view_.per_second = std::clamp(view_.per_second * factor, 30.0, 600.0);
    lay_out();
    reveal(playhead_);
}

void SheetView::zoom_fit() {
    fitted_ = true;
    view_.semitone = 7;
    lay_out();
    reveal(playhead_);
}

void SheetView::stretch(double factor) {
    view_.semitone = std::clamp(view_.semitone * factor, 4.0, 24.0);
    lay_out();
    reveal(playhead_);
}

std::vector<double> SheetView::measure_painting(int frames, int step) {
    std::vector<double> seconds;
    const int whole = std::max(1, GetVirtualSize().y - GetClientSize().y);
    for (int i = 0; i < frames; ++i) {
        const int top = static_cast<int>(static_cast<std::int64_t>(i) * step % whole);
        const auto began = std::chrono::steady_clock::now();
        Scroll(0, top);
        if (layout_ && !layout_->rows().empty())
            set_playhead(layout_->rows()[layout_->row_under(top + GetClientSize().y / 2.0)].shown.middle(),
                         false);
        Refresh();
        Update();
        seconds.push_back(std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count());
        draw_ahead(); // as it does between two frames of the screen
    }
    return seconds;
}

} // namespace luft::desk
