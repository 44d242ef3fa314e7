#include "desk/budget_bar.h"

#include "base/text.h"
#include "desk/bitmap.h"
#include "desk/sheet_view.h"
#include "desk/text.h"

#include <algorithm>
#include <cmath>

namespace luft::desk {
namespace {

constexpr int kHeight = 56, kEdge = 12, kBar = 20, kBarTop = 28;
constexpr double kUpright = 4; ///< from stripe to stripe where another performance plays
constexpr sheet::Type kWords{13, false, false}, kLimit{13, true, false}, kNumber{11, true, false};

std::string length(Rational t) {
    return clock_text(seconds(t));
}

bool over(const script::CueSheet& sheet, const project::ScriptSettings& settings) {
    return (settings.most_quoted_share && sheet.quoted_share > *settings.most_quoted_share) ||
           (settings.most_quoted_share && std::ranges::any_of(sheet.others,
                                                              [&](const auto& other) {
                                                                  return other.quoted_share >
                                                                         *settings.most_quoted_share;
                                                              })) ||
           (settings.longest_quote > Seconds(0) &&
            sheet.longest_quote.as_double() > settings.longest_quote.value());
}

} // namespace

std::string budget_words(const script::CueSheet& sheet, const project::ScriptSettings& settings) {
    std::string words = "Runs " + length(sheet.running_time) + ", of it " + length(sheet.talk_time) +
                        " talk.   Quotes " + fixed(100 * sheet.quoted_share, 0) + " % of the recording";
    if (settings.most_quoted_share)
        words += " (at most " + fixed(100 * *settings.most_quoted_share, 0) + " %)";
    words += ", at the longest " + fixed(sheet.longest_quote.as_double(), 1) + " s without a word";
    if (settings.longest_quote > Seconds(0))
        words += " (at most " + fixed(settings.longest_quote.value(), 0) + " s)";
    for (const auto& other : sheet.others)
        words += "; " + fixed(100 * other.quoted_share, 0) + " % of another performance";
    return words + ".";
}

BudgetBar::BudgetBar(wxWindow* parent, std::function<void(std::size_t)> go_to)
    : wxWindow(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxFULL_REPAINT_ON_RESIZE),
      go_to_(std::move(go_to)) {
    SetBackgroundStyle(wxBG_STYLE_PAINT);
    SetMinSize(wxSize(200, kHeight));
    Bind(wxEVT_PAINT, &BudgetBar::paint, this);
    Bind(wxEVT_LEFT_DOWN, [this](wxMouseEvent& event) {
        for (std::size_t i = 0; i < sheet_.segments.size(); ++i)
            if (event.GetX() >= x_of(sheet_.segments[i].programme_start) &&
                event.GetX() < x_of(sheet_.segments[i].programme_end))
                go_to_(i);
    });
}

void BudgetBar::show(const script::CueSheet& sheet, const project::ScriptSettings& settings) {
    sheet_ = sheet;
    settings_ = settings;
    const auto words = budget_words(sheet, settings);
    SetToolTip("The programme from start to end: coloured is what plays, outlined your talk");
    SetLabel(shown(words)); // for who reads the window by ear
    Refresh();
}

void BudgetBar::select(std::optional<project::ScriptItemId> item) {
    selected_ = item;
    Refresh();
}

double BudgetBar::x_of(Rational programme) const {
    const double whole = sheet_.running_time.as_double();
    return kEdge + (GetClientSize().x - 2.0 * kEdge) * (whole > 0 ? programme.as_double() / whole : 0);
}

void BudgetBar::paint(wxPaintEvent&) {
    wxPaintDC dc(this);
    const auto colours = system_colours();
    const double scale = GetContentScaleFactor();
    sheet::Canvas canvas =
        sheet::Canvas::picture(std::max(1, GetClientSize().x), std::max(1, GetClientSize().y), scale);
    canvas.clear(colours.paper);
    const bool much = over(sheet_, settings_);
    canvas.text(kEdge, 19, (much ? "! " : "") + budget_words(sheet_, settings_), much ? kLimit : kWords,
                much ? colours.watch : colours.ink);
    for (const auto& s : sheet_.segments) {
        const double left = x_of(s.programme_start), width = x_of(s.programme_end) - left;
        sheet::Path bar;
        bar.move(left, kBarTop)
            .line(left + width, kBarTop)
            .line(left + width, kBarTop + kBar)
            .line(left, kBarTop + kBar)
            .close();
        if (s.kind == script::SegmentKind::play) canvas.fill(bar, colours.chest);
        if (s.kind == script::SegmentKind::quote) {
            canvas.fill(bar, colours.card);
            for (int i = 0; left + 1.5 + i * kUpright < left + width; ++i) {
                const double x = left + 1.5 + i * kUpright;
                canvas.line(x, kBarTop, x, kBarTop + kBar, colours.strength, 2);
            }
        }
        if (s.kind == script::SegmentKind::replay) canvas.fill_striped(bar, colours.chest, colours.card);
        if (s.kind != script::SegmentKind::talk) continue;
        const bool selected = s.item && s.item == selected_;
        canvas.fill(bar, selected ? colours.selected : colours.card);
        canvas.frame(left + 0.5, kBarTop + 0.5, std::max(1.0, width - 1), kBar - 1,
                     selected ? colours.chest : colours.faint, selected ? 2 : 1);
        const auto number = std::to_string(s.stop_number);
        if (s.stop_number > 0 && width > canvas.extent(number, kNumber).width + 4)
            canvas.text(left + width / 2, kBarTop + 14, number, kNumber, colours.ink, sheet::Anchor::middle);
    }
    for (const auto& aside : sheet_.asides) // over the music
        canvas.box(x_of(aside.programme_start), kBarTop + kBar - 6,
                   std::max(2.0, x_of(aside.programme_end) - x_of(aside.programme_start)), 6, colours.paper);
    dc.DrawBitmap(bitmap_of(canvas, scale), 0, 0);
}

} // namespace luft::desk
