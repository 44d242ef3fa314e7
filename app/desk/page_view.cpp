#include "desk/page_view.h"

#include "desk/bitmap.h"
#include "desk/sheet_view.h"
#include "desk/wheel.h"

#include <algorithm>
#include <cmath>

namespace luft::desk {
namespace {

constexpr int kGap = 16;
constexpr int kAcross = 2;
constexpr double kMostZoom = 1.5;

} // namespace

PageView::PageView(wxWindow* parent, Session& session, std::function<void(Seconds)> go_to)
    : wxScrolled<wxWindow>(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL), session_(session),
      go_to_(std::move(go_to)) {
    SetBackgroundStyle(wxBG_STYLE_PAINT);
    SetScrollRate(0, 1);
    Bind(wxEVT_PAINT, &PageView::paint, this);
    Bind(wxEVT_MOUSEWHEEL, [this](wxMouseEvent& event) { scroll_by_wheel(*this, event); });
    Bind(wxEVT_LEFT_UP, &PageView::click, this);
    Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
        event.Skip();
        if (pages_) lay_out();
    });
    session_.watch([this](const Session::Change& change) {
        if (!change.project && !change.shown && !change.contents) return;
        stale_ = true;
        pages_.reset(); // it looks into what has just been replaced
        if (IsShownOnScreen()) bring_up_to_date();
    });
}

void PageView::bring_up_to_date() {
    if (!stale_) return;
    stale_ = false;
    pages_ = std::make_unique<sheet::Pages>(session_.source());
    lay_out();
}

void PageView::lay_out() {
    const int width = GetClientSize().x;
    zoom_ = std::clamp((width - (kAcross + 1.0) * kGap) / (kAcross * sheet::kPageWidth), 0.2, kMostZoom);
    pictures_.assign(static_cast<std::size_t>(pages_->count()), wxBitmap());
    SetVirtualSize(width, place_of(pages_->count() - 1).GetBottom() + kGap);
    Refresh();
}

wxRect PageView::place_of(int page) const {
    const int wide = static_cast<int>(sheet::kPageWidth * zoom_),
              high = static_cast<int>(sheet::kPageHeight * zoom_);
    const int left = (GetClientSize().x - kAcross * wide - (kAcross - 1) * kGap) / 2;
    return {left + page % kAcross * (wide + kGap), kGap + page / kAcross * (high + kGap), wide, high};
}

const wxBitmap& PageView::picture(int page) {
    wxBitmap& bitmap = pictures_[static_cast<std::size_t>(page)];
    if (bitmap.IsOk()) return bitmap;
    const double scale = GetContentScaleFactor();
    const wxRect place = place_of(page);
    sheet::Canvas canvas = sheet::Canvas::picture(place.width, place.height, scale);
    canvas.clear({255, 255, 255});
    canvas.zoom(zoom_);
    pages_->draw(canvas, page);
    bitmap = bitmap_of(canvas, scale);
    return bitmap;
}

void PageView::paint(wxPaintEvent&) {
    wxPaintDC dc(this);
    DoPrepareDC(dc);
    const int top = CalcUnscrolledPosition({0, 0}).y, bottom = top + GetClientSize().y;
    dc.SetPen(*wxTRANSPARENT_PEN);
    dc.SetBrush(wxBrush(to_wx(system_colours().rule)));
    dc.DrawRectangle(0, top, GetClientSize().x, GetClientSize().y);
    for (int page = 0; pages_ && page < pages_->count(); ++page) {
        const wxRect place = place_of(page);
        if (place.GetBottom() >= top && place.y <= bottom) dc.DrawBitmap(picture(page), place.GetPosition());
    }
}

void PageView::click(wxMouseEvent& event) {
    event.Skip();
    const wxPoint at = CalcUnscrolledPosition(event.GetPosition());
    for (int page = 0; pages_ && page < pages_->count(); ++page) {
        const wxRect place = place_of(page);
        if (!place.Contains(at)) continue;
        if (const auto time = pages_->time_at(page, (at.x - place.x) / zoom_, (at.y - place.y) / zoom_))
            go_to_(*time);
    }
}

} // namespace luft::desk
