// The strip under the words: how the time goes, what the keys do, and what is recorded.
#include "desk/rehearsal_page.h"
#include "desk/sheet_view.h"
#include "desk/text.h"
#include "desk/work/rehearsal_words.h"
#include "desk/work/wrap.h"

#include <algorithm>
#include <cmath>

namespace luft::desk {
namespace {

constexpr double kQuietest = -60; ///< dB: where the level's bar begins

wxString keys(const Rehearsal& rehearsal, bool recording) {
    const bool paused = rehearsal.state() == Rehearsal::State::paused;
    const wxString dot = shown(" · ");
    return wxString("Space: go on") + dot + "Backspace: back" + dot + (paused ? "P: resume" : "P: pause") +
           dot + (recording ? "R: stop recording" : "R: record") + dot + "Esc: end";
}

} // namespace

void RehearsalPage::draw_strip(const Rehearsal& rehearsal, Seconds now, const RecordingShown& recording) {
    wxRect row = strip_;
    row.height = unit_ * 3 / 4;
    draw_bar(row, rehearsal.elapsed(now), rehearsal.planned());

    row.y = row.GetBottom() + unit_ / 2;
    row.height = 2 * unit_;
    const bool over = rehearsal.talking() && rehearsal.elapsed(now) >= rehearsal.planned() + Seconds(1);
    set(unit_ * 3 / 2, over ? colours_.watch : colours_.ink, true);
    const wxString kind = rehearsal.talking() ? "Talk " : rehearsal.elsewhere() ? "Elsewhere " : "Music ";
    const int used = draw_line(*dc_, kind + shown(step_time_words(rehearsal, now)), row);
    set(unit_ * 5 / 4, colours_.soft);
    wxRect right = row;
    right.x += used + unit_;
    right.width -= used + unit_;
    draw_line(*dc_, shown(programme_words(rehearsal, now)), right, wxALIGN_RIGHT);

    row.y = row.GetBottom() + unit_ / 4;
    set(unit_, colours_.soft);
    const int keys_width = draw_line(*dc_, keys(rehearsal, recording.on), row);
    right = row;
    right.x += keys_width + unit_;
    right.width -= keys_width + unit_;
    if (recording.on) draw_recording(right, recording);

    set(unit_, colours_.watch);
    row.height = unit_ * 3 / 2;
    row.y += unit_ / 2;
    const auto lines = wrapped(recording.note, row.width,
                               [&](const std::string& piece) { return dc_->GetTextExtent(shown(piece)).x; });
    for (const auto& line : lines)
        draw_line(*dc_, shown(line), {row.x, row.y += row.height, row.width, row.height});
}

/// Fills up to the planned time; beyond it grows a hatched part, and a stroke stands where it was to end.
void RehearsalPage::draw_bar(const wxRect& place, Seconds elapsed, Seconds planned) {
    const double whole = std::max({elapsed.value(), planned.value(), 0.001});
    const auto x_of = [&](Seconds t) {
        return place.x + static_cast<int>(std::lround(place.width * std::clamp(t.value() / whole, 0.0, 1.0)));
    };
    dc_->SetPen(*wxTRANSPARENT_PEN);
    dc_->SetBrush(wxBrush(to_wx(colours_.rule)));
    dc_->DrawRectangle(place);
    dc_->SetBrush(wxBrush(to_wx(colours_.playhead)));
    const int to = x_of(std::min(elapsed, planned));
    dc_->DrawRectangle(place.x, place.y, to - place.x, place.height);
    if (elapsed <= planned) return;
    const int mark = x_of(planned);
    dc_->SetBrush(wxBrush(to_wx(colours_.watch), wxBRUSHSTYLE_BDIAGONAL_HATCH));
    dc_->DrawRectangle(mark, place.y, place.GetRight() + 1 - mark, place.height);
    dc_->SetPen(wxPen(to_wx(colours_.ink), std::max(2, unit_ / 6)));
    dc_->DrawLine(mark, place.y - unit_ / 4, mark, place.GetBottom() + unit_ / 4);
}

void RehearsalPage::draw_recording(const wxRect& place, const RecordingShown& recording) {
    const wxString words = recording.now ? "Recording" : "Recording from next talk";
    const wxString level =
        recording.level ? wxString::Format("%.0f dB", recording.level->value()) : wxString("no signal");
    const int level_width = dc_->GetTextExtent("no signal ").x, bar = 8 * unit_;
    const int room = place.width - level_width - bar - 2 * unit_;
    if (room < 4 * unit_) return;
    set(unit_, recording.now ? colours_.ink : colours_.soft, recording.now);
    draw_line(*dc_, words, {place.x, place.y, room, place.height}, wxALIGN_RIGHT);
    const wxRect meter(place.x + room + unit_, place.y + place.height / 3, bar, place.height / 3);
    dc_->SetPen(*wxTRANSPARENT_PEN);
    dc_->SetBrush(wxBrush(to_wx(colours_.rule)));
    dc_->DrawRectangle(meter);
    const double share =
        recording.level ? std::clamp(1 - recording.level->value() / kQuietest, 0.0, 1.0) : 0.0;
    dc_->SetBrush(wxBrush(to_wx(colours_.chest)));
    dc_->DrawRectangle(meter.x, meter.y, static_cast<int>(meter.width * share), meter.height);
    set(unit_, colours_.soft);
    draw_line(*dc_, level, {meter.GetRight(), place.y, place.GetRight() - meter.GetRight(), place.height},
              wxALIGN_RIGHT);
}

} // namespace luft::desk
