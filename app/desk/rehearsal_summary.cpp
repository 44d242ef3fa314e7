#include "desk/rehearsal_summary.h"

#include "desk/prompt.h"
#include "desk/rehearsal_page.h"
#include "desk/sheet_view.h"
#include "desk/text.h"
#include "desk/work/rehearsal_words.h"

#include <algorithm>

namespace luft::desk {
namespace {

constexpr int kHead = 8; ///< units over the rows
constexpr int kFoot = 2; ///< and under them

int row_height(int unit) {
    return unit * 5 / 2;
}

int rows_seen(const wxRect& area, int unit) {
    return std::max(1, (area.height - (kHead + kFoot) * unit) / row_height(unit));
}

wxString recorded(std::size_t takes) {
    if (takes == 0) return {};
    return wxString::Format(" %zu of them %s recorded.", takes, takes == 1 ? "is" : "are");
}

} // namespace

int summary_hidden(const wxRect& area, const Rehearsal& rehearsal) {
    const int unit = RehearsalPage::unit(area.height);
    return std::max(0, static_cast<int>(rehearsal.talks().size()) - rows_seen(area, unit));
}

void draw_summary(wxDC& dc, const wxRect& area, const wxFont& font, const Rehearsal& rehearsal,
                  std::size_t takes, int first) {
    const sheet::Colours colours = system_colours();
    const int unit = RehearsalPage::unit(area.height);
    const auto set = [&](int size, sheet::Colour colour, bool bold = false) {
        dc.SetFont(sized(font, size, bold));
        dc.SetTextForeground(to_wx(colour));
    };
    set(unit * 2, colours.ink, true);
    draw_line(dc, "How long the talks took", {area.x, area.y, area.width, 3 * unit});
    set(unit * 5 / 4, colours.soft);
    draw_line(dc, shown(sum_words(rehearsal)) + recorded(takes),
              {area.x, area.y + 3 * unit, area.width, 2 * unit});

    const int wide = 8 * unit, last = 12 * unit; // planned and measured, difference
    const int title = std::max(wide, area.width - 2 * wide - last);
    const auto row = [&](int y, const wxString& what, const wxString& planned, const wxString& measured,
                         const wxString& difference) {
        wxRect place(area.x, y, title, row_height(unit));
        draw_line(dc, what, place);
        place.x += title;
        place.width = wide - unit;
        draw_line(dc, planned, place, wxALIGN_RIGHT);
        place.x += wide;
        draw_line(dc, measured, place, wxALIGN_RIGHT);
        place.x += wide + unit;
        place.width = last - unit;
        draw_line(dc, difference, place);
    };
    int y = area.y + kHead * unit - row_height(unit);
    set(unit, colours.soft, true);
    row(y, "", "planned", "measured", "");
    const auto talks = rehearsal.talks();
    const int end = std::min(static_cast<int>(talks.size()), first + rows_seen(area, unit));
    for (int i = first; i < end; ++i) {
        y += row_height(unit);
        const auto& talk = talks[static_cast<std::size_t>(i)];
        dc.SetPen(wxPen(to_wx(colours.rule)));
        dc.DrawLine(area.x, y, area.GetRight(), y);
        set(unit * 5 / 4, talk.measured ? colours.ink : colours.faint);
        row(y, shown(talk.title), shown(minutes(talk.planned)),
            talk.measured ? shown(minutes(*talk.measured)) : shown("–"), shown(difference_words(talk)));
    }
    const int more = static_cast<int>(talks.size()) - end;
    if (more == 0) return;
    set(unit, colours.soft);
    draw_line(dc, wxString::Format("%d more: wheel, or arrow down", more),
              {area.x, y + row_height(unit), area.width, kFoot * unit});
}

} // namespace luft::desk
