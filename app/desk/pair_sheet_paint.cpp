// How two performances are painted in the window.
#include "desk/bitmap.h"
#include "desk/pair_sheet.h"
#include "desk/sheet_view.h"

#include <wx/dcbuffer.h>

namespace luft::desk {
namespace {

using sheet::index_of;
using sheet::kBoth;
using sheet::Which;

constexpr int kFlag = 5; ///< of a place's triangle

} // namespace

const wxBitmap& PairSheet::picture(std::size_t part) {
    wxBitmap& kept = pictures_[part];
    if (kept.IsOk()) return kept;
    const double scale = GetContentScaleFactor();
    const double height = part == 0 ? layout_->head_height() : layout_->places()[part - 1].height;
    auto canvas = sheet::Canvas::picture(static_cast<int>(view_.width), static_cast<int>(height), scale);
    sheet::PairLook look;
    look.look.colours = system_colours();
    look.selected = selected_;
    canvas.clear(look.look.colours.paper);
    if (part == 0)
        sheet::draw_pair_head(canvas, *layout_, look);
    else
        sheet::draw_pair_row(canvas, *layout_, part - 1, look);
    kept = bitmap_of(canvas, scale);
    return kept;
}

void PairSheet::paint(wxPaintEvent&) {
    wxPaintDC dc(this);
    DoPrepareDC(dc);
    const wxSize size = GetClientSize();
    const int top = CalcUnscrolledPosition({0, 0}).y, bottom = top + size.y;
    const auto colours = system_colours();
    dc.SetPen(*wxTRANSPARENT_PEN);
    dc.SetBrush(wxBrush(to_wx(colours.paper)));
    dc.DrawRectangle(0, top, size.x, size.y);
    if (!layout_ || layout_->rows().empty()) {
        dc.SetTextForeground(to_wx(colours.soft));
        dc.DrawLabel(empty_, wxRect(0, top, size.x, size.y * 2 / 3), wxALIGN_CENTRE);
        return;
    }
    if (top < layout_->head_height()) dc.DrawBitmap(picture(0), 0, 0);
    const auto& places = layout_->places();
    for (std::size_t row = layout_->row_under(top); row < places.size() && places[row].top < bottom; ++row)
        dc.DrawBitmap(picture(row + 1), 0, static_cast<int>(places[row].top));
    for (const Which which : kBoth) {
        if (const auto at = places_[index_of(which)])
            draw_time(dc, which, *at, wxPen(to_wx(colours.ink), 1), true);
        if (const auto at = playheads_[index_of(which)])
            draw_time(dc, which, *at, wxPen(to_wx(colours.playhead), 2), false);
    }
}

/// A line through one performance's staff, with a flag at its head for a place that was clicked.
void PairSheet::draw_time(wxDC& dc, Which which, Seconds own, const wxPen& pen, bool flag) const {
    const auto row = layout_->row_of(which, own);
    if (!row) return;
    const double top = layout_->places()[*row].top;
    const auto& staff = layout_->staff(*row, which);
    const int x = static_cast<int>(layout_->x_of(*row, which, own));
    const int from = static_cast<int>(top + staff.top - (flag ? 4 : 10)),
              to = static_cast<int>(top + staff.bottom);
    dc.SetPen(pen);
    dc.DrawLine(x, from, x, to);
    if (!flag) return;
    dc.SetBrush(wxBrush(pen.GetColour()));
    const wxPoint triangle[] = {{x - kFlag, from - kFlag}, {x + kFlag, from - kFlag}, {x, from + 1}};
    dc.DrawPolygon(3, triangle);
}

} // namespace luft::desk
