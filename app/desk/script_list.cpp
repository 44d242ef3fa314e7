#include "desk/script_list.h"

#include "desk/bitmap.h"
#include "desk/sheet_view.h"
#include "desk/text.h"
#include "desk/wheel.h"

#include <algorithm>
#include <cmath>

namespace luft::desk {
namespace {

constexpr int kWhen = 70; ///< room for the programme's time
constexpr int kPad = 12, kGap = 7, kIndent = 26, kTop = 14;
constexpr int kDragged = 6;
constexpr sheet::Type kTitle{15, true, false}, kFacts{13, false, false}, kWords{14.5, false, false},
    kSoft{13, false, true};

} // namespace

ScriptList::ScriptList(wxWindow* parent, Wishes wishes)
    : wxScrolled<wxWindow>(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL | wxWANTS_CHARS),
      wishes_(std::move(wishes)), measuring_(sheet::Canvas::picture(1, 1)) {
    SetBackgroundStyle(wxBG_STYLE_PAINT);
    SetScrollRate(0, 1);
    ShowScrollbars(wxSHOW_SB_NEVER, wxSHOW_SB_ALWAYS);
    Bind(wxEVT_PAINT, &ScriptList::paint, this);
    Bind(wxEVT_MOUSEWHEEL, [this](wxMouseEvent& event) { scroll_by_wheel(*this, event); });
    for (const auto& type : {wxEVT_LEFT_DOWN, wxEVT_LEFT_UP, wxEVT_MOTION, wxEVT_LEFT_DCLICK})
        Bind(type, &ScriptList::mouse, this);
    Bind(wxEVT_MOUSE_CAPTURE_LOST, [this](wxMouseCaptureLostEvent&) { drag_.reset(); });
    Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
        event.Skip();
        lay_out();
    });
}

void ScriptList::show(std::vector<ScriptRow> rows, const std::vector<script::Warning>& warnings) {
    rows_ = std::move(rows);
    complaints_.assign(rows_.size(), {});
    for (std::size_t i = 0; i < rows_.size(); ++i)
        for (const std::size_t w : rows_[i].warnings)
            complaints_[i].push_back(warnings.at(w).words);
    selected_.reset();
    drag_.reset();
    lay_out();
}

void ScriptList::say_when_empty(const wxString& words) {
    empty_ = words;
    Refresh();
}

void ScriptList::lay_out() {
    int y = kTop;
    places_.clear();
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        const int height = draw_row(measuring_, i, true);
        places_.push_back({y, height});
        y += height + kGap;
    }
    SetVirtualSize(GetClientSize().x, y + kTop);
    Refresh();
}

/// Draws a row at the canvas' origin, or only measures it. Returns its height.
int ScriptList::draw_row(sheet::Canvas& canvas, std::size_t index, bool measure) const {
    const ScriptRow& row = rows_[index];
    const auto colours = system_colours();
    const bool music = row.kind == ScriptRow::Kind::music;
    const double left = kWhen + kPad + (row.kind == ScriptRow::Kind::aside ? kIndent : 0);
    const double width = std::max(120.0, GetClientSize().x - left - 2.0 * kPad);
    double y = music ? 5 : 9;
    const auto words = [&](const std::string& text, sheet::Type type, sheet::Colour colour, int most = 0) {
        if (text.empty()) return;
        y += measure ? canvas.paragraph_height(width, text, type, most)
                     : canvas.paragraph(left, y, width, text, type, colour, most);
        y += 3;
    };
    if (!measure) {
        if (!music) draw_card(canvas, row, selected_ == index, places_[index].height);
        if (music) {
            if (selected_ == index)
                canvas.box(kWhen - 4, 0, left + width - kWhen + kPad + 4, places_[index].height,
                           colours.selected, 6);
            canvas.box(kWhen + 1, 4, 5, places_[index].height - 8, colours.chest, 2);
        }
        canvas.text(kWhen - 10, y + 14, row.when, kFacts, colours.soft, sheet::Anchor::end);
        const double facts = canvas.extent(row.facts, kFacts).width;
        canvas.text(left + width, y + 14, row.facts, kFacts, colours.soft, sheet::Anchor::end);
        canvas.paragraph(left, y, width - facts - kPad, row.title, music ? kFacts : kTitle,
                         music ? colours.soft : colours.ink, 1);
    }
    y += music ? 20 : 23;
    words(row.text, music ? kSoft : kWords, music ? colours.soft : colours.ink, music ? 1 : 0);
    words(row.after, kSoft, colours.soft);
    if (row.own_words) words("your words", kSoft, colours.strength);
    for (const auto& complaint : complaints_[index])
        words("! " + complaint, {13, true, false}, colours.watch);
    return static_cast<int>(std::ceil(y + (music ? 2 : 6)));
}

void ScriptList::draw_card(sheet::Canvas& canvas, const ScriptRow& row, bool selected, int height) const {
    const auto colours = system_colours();
    const bool aside = row.kind == ScriptRow::Kind::aside;
    const double left = kWhen + (aside ? kIndent : 0), width = GetClientSize().x - left - kPad;
    canvas.box(left, 0, width, height, colours.card, 6);
    if (selected) canvas.box(left, 0, width, height, colours.selected, 6);
    // An aside is spoken while it plays: its frame is dotted, a halt's is solid.
    canvas.frame(left + 0.5, 0.5, width - 1, height - 1, selected ? colours.chest : colours.rule,
                 selected ? 2 : 1, 6, aside ? sheet::Line::dotted : sheet::Line::solid);
}

void ScriptList::select(std::optional<std::size_t> row) {
    if (selected_ == row) return;
    selected_ = row;
    if (row && *row < places_.size()) {
        const Place& place = places_[*row];
        const int top = GetViewStart().y, high = GetClientSize().y;
        if (place.top - kTop < top)
            Scroll(0, place.top - kTop);
        else if (place.top + place.height + kTop > top + high)
            Scroll(0, std::min(place.top - kTop, place.top + place.height + kTop - high));
    }
    Refresh();
}

void ScriptList::paint(wxPaintEvent&) {
    wxPaintDC dc(this);
    DoPrepareDC(dc);
    const auto colours = system_colours();
    const int top = CalcUnscrolledPosition({0, 0}).y, bottom = top + GetClientSize().y;
    dc.SetPen(*wxTRANSPARENT_PEN);
    dc.SetBrush(wxBrush(to_wx(colours.paper)));
    dc.DrawRectangle(0, top, GetClientSize().x, GetClientSize().y);
    if (rows_.empty()) {
        dc.SetTextForeground(to_wx(colours.soft));
        dc.DrawLabel(empty_, wxRect(0, top, GetClientSize().x, GetClientSize().y), wxALIGN_CENTRE);
        return;
    }
    const double scale = GetContentScaleFactor();
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        const Place& place = places_[i];
        if (place.top + place.height < top || place.top > bottom) continue;
        sheet::Canvas canvas = sheet::Canvas::picture(std::max(1, GetClientSize().x), place.height, scale);
        canvas.clear(colours.paper);
        draw_row(canvas, i, false);
        dc.DrawBitmap(bitmap_of(canvas, scale), 0, place.top);
    }
    if (!drag_ || !drag_->moving) return;
    const std::size_t gap = gap_at(drag_->now);
    const int y = gap < places_.size() ? places_[gap].top - kGap / 2
                                       : places_.back().top + places_.back().height + kGap / 2;
    dc.SetPen(wxPen(to_wx(colours.chest), FromDIP(3)));
    dc.DrawLine(kWhen, y, GetClientSize().x - kPad, y);
}

std::optional<std::size_t> ScriptList::row_under(int y) const {
    for (std::size_t i = 0; i < places_.size(); ++i)
        if (y >= places_[i].top && y < places_[i].top + places_[i].height + kGap) return i;
    return std::nullopt;
}

std::size_t ScriptList::gap_at(int y) const {
    std::size_t gap = 0;
    while (gap < places_.size() && y > places_[gap].top + places_[gap].height / 2)
        ++gap;
    return gap;
}

void ScriptList::mouse(wxMouseEvent& event) {
    event.Skip();
    const int y = CalcUnscrolledPosition(event.GetPosition()).y;
    if (event.LeftDClick()) return wishes_.edit();
    if (event.LeftDown()) {
        SetFocus();
        const auto row = row_under(y);
        if (!row) return;
        wishes_.select(*row);
        if (*row < rows_.size() && rows_[*row].item) {
            drag_ = Drag{*row, y, y};
            CaptureMouse();
        }
    } else if (drag_ && event.Dragging()) {
        drag_->now = y;
        drag_->moving = drag_->moving || std::abs(y - drag_->from) > FromDIP(kDragged);
        Refresh();
    } else if (event.LeftUp() && drag_) {
        if (HasCapture()) ReleaseMouse();
        drop();
    }
}

void ScriptList::drop() {
    const Drag drag = *drag_;
    drag_.reset();
    Refresh();
    if (!drag.moving) return;
    const std::size_t gap = gap_at(drag.now);
    if (gap == drag.row || gap == drag.row + 1) return;
    std::optional<project::ScriptItemId> before, after;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (!rows_[i].item || i == drag.row) continue;
        if (i < gap) before = rows_[i].item;
        if (i >= gap && !after) after = rows_[i].item;
    }
    wishes_.move(*rows_[drag.row].item, before, after);
}

} // namespace luft::desk
