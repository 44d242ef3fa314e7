#include "desk/rehearsal_page.h"

#include "desk/sheet_view.h"
#include "desk/text.h"
#include "desk/work/exact_times.h"
#include "desk/work/rehearsal_words.h"
#include "script/title.h"

#include <algorithm>
#include <cmath>

namespace luft::desk {
namespace {

constexpr int kLeastLetters = 40;        ///< pixels: legible from two metres. Common practice, no source
constexpr Seconds kGetReady{5};          ///< an aside is announced so long before
constexpr std::size_t kFirstWords = 110; ///< characters of the next talk that are shown ahead

} // namespace

int RehearsalPage::unit(int height) {
    return std::clamp(height / 42, 13, 34);
}

void RehearsalPage::set(int size, sheet::Colour colour, bool bold) {
    dc_->SetFont(sized(font_, size, bold));
    dc_->SetTextForeground(to_wx(colour));
}

void RehearsalPage::draw(wxDC& dc, wxSize size, const wxFont& font, const Rehearsal& rehearsal, Seconds now,
                         int lines, const RecordingShown& recording) {
    dc_ = &dc;
    font_ = font;
    colours_ = system_colours();
    height_ = size.y;
    unit_ = unit(size.y);
    const int side = std::max(2 * unit_, size.x / 14);
    top_ = wxRect(side, unit_, size.x - 2 * side, 2 * unit_);
    strip_ = wxRect(side, size.y - 9 * unit_, size.x - 2 * side, 9 * unit_);
    words_ = wxRect(side, top_.GetBottom() + 2 * unit_, size.x - 2 * side, 0);
    words_.height = strip_.y - unit_ - words_.y;

    dc.SetPen(*wxTRANSPARENT_PEN);
    dc.SetBrush(wxBrush(to_wx(colours_.paper)));
    dc.DrawRectangle(size);
    dc.SetPen(wxPen(to_wx(colours_.rule)));
    dc.DrawLine(side, top_.GetBottom() + unit_ / 2, size.x - side, top_.GetBottom() + unit_ / 2);
    draw_top(rehearsal);
    if (rehearsal.talking())
        draw_talk(rehearsal, now, lines);
    else
        draw_music(rehearsal, now);
    draw_strip(rehearsal, now, recording);
    dc_ = nullptr;
}

void RehearsalPage::draw_top(const Rehearsal& rehearsal) {
    wxString what = shown(step_words(rehearsal));
    if (rehearsal.state() == Rehearsal::State::paused) what = "Paused: " + what;
    set(unit_ * 5 / 4, colours_.soft);
    const wxString then = shown(next_words(rehearsal));
    wxRect right = top_;
    right.width = std::min(dc_->GetTextExtent(then).x, top_.width / 2);
    right.x = top_.GetRight() - right.width;
    draw_line(*dc_, then, right, wxALIGN_RIGHT);
    set(unit_ * 3 / 2, colours_.ink, true);
    wxRect left = top_;
    left.width -= right.width + 2 * unit_;
    draw_line(*dc_, what, left);
}

void RehearsalPage::draw_talk(const Rehearsal& rehearsal, Seconds now, int lines) {
    const std::string& text = rehearsal.segment()->text;
    const bool empty = text.find_first_not_of(" \t\r\n") == std::string::npos;
    set(unit_, empty ? colours_.soft : colours_.ink);
    prompt_.lay_out(*dc_, empty ? "No words are written here. Speak freely, or go on." : text, words_,
                    {kLeastLetters, std::max(kLeastLetters, height_ / 8)});
    const Seconds planned = rehearsal.planned();
    prompt_.draw(*dc_, planned > Seconds(0) ? rehearsal.elapsed(now) / planned : 1, lines);
}

void RehearsalPage::draw_music(const Rehearsal& rehearsal, Seconds now) {
    const Seconds left = rehearsal.planned() - rehearsal.elapsed(now);
    if (const auto* aside = rehearsal.aside())
        return draw_aside(aside->text, "Say over the music, now:", true, left);
    const auto coming = rehearsal.coming_aside();
    if (coming && coming->wait <= kGetReady)
        return draw_aside(coming->aside->text,
                          shown("To say over the music in " + minutes(coming->wait + Seconds(0.5)) + ":"),
                          false, left);
    draw_wait(left, rehearsal);
}

void RehearsalPage::draw_wait(Seconds left, const Rehearsal& rehearsal) {
    const int size = std::min(height_ / 4, words_.height / 3);
    wxRect row(words_.x, words_.y + words_.height / 12, words_.width, size);
    set(size, colours_.ink);
    // A countdown reads 0:01 until its end.
    draw_line(*dc_, shown(minutes(Seconds(std::ceil(left.value())))), row);
    row.y = row.GetBottom() + unit_;
    row.height = 2 * unit_;
    const auto* talk = rehearsal.next_talk();
    const bool directly = talk && talk == rehearsal.next();
    const auto* next = rehearsal.next();
    set(unit_ * 3 / 2, colours_.soft);
    draw_line(*dc_,
              rehearsal.elsewhere() ? wxString("the other recording plays here")
              : directly            ? shown("until " + talk->title)
              : next                ? wxString("of music")
                                    : wxString("until the end"),
              row);
    if (!talk) return;
    const int top = row.GetBottom() + unit_;
    set(unit_, colours_.faint);
    prompt_.lay_out(*dc_, script::one_line(talk->text, kFirstWords),
                    {words_.x, top, words_.width, words_.GetBottom() - top},
                    {2 * unit_, std::max(2 * unit_, height_ / 16)});
    prompt_.draw(*dc_, 0, 0);
}

void RehearsalPage::draw_aside(const std::string& words, const wxString& above, bool due, Seconds left) {
    wxRect row = words_;
    row.height = 2 * unit_;
    set(unit_ * 3 / 2, due ? colours_.change : colours_.soft, due);
    const int used = draw_line(*dc_, above, row);
    set(unit_ * 5 / 4, colours_.soft);
    wxRect right = row;
    right.x += used + unit_;
    right.width -= used + unit_;
    draw_line(*dc_, shown(minutes(Seconds(std::ceil(left.value()))) + " of music left"), right,
              wxALIGN_RIGHT);
    const int top = row.GetBottom() + unit_;
    set(unit_, due ? colours_.ink : colours_.faint);
    prompt_.lay_out(*dc_, words, {words_.x, top, words_.width, words_.GetBottom() - top},
                    {kLeastLetters, std::max(kLeastLetters, height_ / 8)});
    prompt_.draw(*dc_, 0, 0);
}

} // namespace luft::desk
