#include "desk/difference_list.h"

#include "base/text.h"
#include "desk/bitmap.h"
#include "desk/sheet_view.h"
#include "desk/wheel.h"
#include "export/compare_words.h"
#include "sheet/glyphs.h"
#include "sheet/pair_words.h"

#include <wx/dcbuffer.h>

#include <algorithm>
#include <cmath>

namespace luft::desk {
namespace {

constexpr int kTop = 4, kGap = 5, kEdge = 8, kLeft = 34, kPad = 8;
constexpr sheet::Type kTitle{13, true, false}, kWords{13, false, false}, kSoft{12, false, false};

} // namespace

DifferenceList::DifferenceList(wxWindow* parent, Wishes wishes)
    : wxScrolled<wxWindow>(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL | wxWANTS_CHARS),
      wishes_(std::move(wishes)), measuring_(sheet::Canvas::picture(1, 1)) {
    SetBackgroundStyle(wxBG_STYLE_PAINT);
    SetScrollRate(0, 1);
    ShowScrollbars(wxSHOW_SB_NEVER, wxSHOW_SB_ALWAYS);
    Bind(wxEVT_PAINT, &DifferenceList::paint, this);
    Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
        event.Skip();
        lay_out();
    });
    Bind(wxEVT_MOUSEWHEEL, [this](wxMouseEvent& event) { scroll_by_wheel(*this, event, 60); });
    Bind(wxEVT_LEFT_DOWN, [this](wxMouseEvent& event) {
        SetFocus();
        const int y = CalcUnscrolledPosition(event.GetPosition()).y;
        for (const Card& card : cards_)
            if (y >= card.top && y < card.top + card.height) return wishes_.select(card.difference);
    });
    Bind(wxEVT_LEFT_DCLICK, [this](wxMouseEvent&) { wishes_.play(); });
}

void DifferenceList::show(std::shared_ptr<const Matched> matched, std::vector<std::size_t> order) {
    matched_ = std::move(matched);
    order_ = std::move(order);
    lay_out();
}

void DifferenceList::lay_out() {
    cards_.clear();
    int y = kTop;
    if (matched_) {
        const auto& all = matched_->comparison.differences;
        const auto numbers = sheet::pair_numbers(all);
        for (const std::size_t i : order_) {
            Card card{i, numbers[i], y, 0};
            card.height = draw(measuring_, card, true);
            y += card.height + kGap;
            cards_.push_back(card);
        }
    }
    SetVirtualSize(GetClientSize().x, y);
    Refresh();
}

/// Draws a card at the canvas' origin, or only measures it. Returns its height.
int DifferenceList::draw(sheet::Canvas& canvas, const Card& card, bool measure) const {
    const auto& difference = matched_->comparison.differences[card.difference];
    const auto colours = system_colours();
    const double width = std::max(80, GetClientSize().x - 2 * kEdge);
    const double inner = width - kLeft - kPad;
    const bool selected = selected_ == card.difference;
    if (!measure) {
        canvas.box(0, 0, width, card.height, colours.card, 5);
        if (selected) canvas.box(0, 0, width, card.height, colours.selected, 5);
        canvas.frame(0.5, 0.5, width - 1, card.height - 1, selected ? colours.watch : colours.rule,
                     selected ? 2 : 1, 5);
        if (card.number > 0)
            sheet::draw_number(canvas, 17, 16, card.number, colours.watch, colours.card, true);
        const std::string facts = (difference.a ? clock_text(difference.a->start) + ", " : "") +
                                  exports::sure_words(difference) + " sure";
        canvas.text(width - kPad, 20, facts, kSoft, colours.soft, sheet::Anchor::end);
        canvas.paragraph(kLeft, 6, inner - canvas.extent(facts, kSoft).width - kPad,
                         sheet::short_words(difference), kTitle, colours.ink, 1);
    }
    const double y = 25;
    const double height = measure
                              ? canvas.paragraph_height(inner, difference.sentence, kWords)
                              : canvas.paragraph(kLeft, y, inner, difference.sentence, kWords, colours.ink);
    return static_cast<int>(std::ceil(y + height + 7));
}

void DifferenceList::select(std::optional<std::size_t> difference) {
    selected_ = difference;
    Refresh();
    for (const Card& card : cards_) {
        if (card.difference != difference) continue;
        const int top = CalcUnscrolledPosition({0, 0}).y, height = GetClientSize().y;
        if (card.top < top) Scroll(0, card.top - kTop);
        if (card.top + card.height > top + height) Scroll(0, card.top + card.height + kGap - height);
    }
}

void DifferenceList::paint(wxPaintEvent&) {
    wxPaintDC dc(this);
    DoPrepareDC(dc);
    const wxSize size = GetClientSize();
    const int top = CalcUnscrolledPosition({0, 0}).y;
    const double scale = GetContentScaleFactor();
    auto canvas = sheet::Canvas::picture(size.x, size.y, scale);
    canvas.clear(system_colours().paper);
    for (const Card& card : cards_) {
        if (card.top + card.height < top || card.top > top + size.y) continue;
        canvas.save();
        canvas.move(kEdge, card.top - top);
        draw(canvas, card, false);
        canvas.restore();
    }
    dc.DrawBitmap(bitmap_of(canvas, scale), 0, top);
}

} // namespace luft::desk
