#include "desk/prompt.h"

#include "desk/text.h"
#include "desk/work/wrap.h"

#include <wx/control.h>
#include <wx/dcclient.h>

#include <algorithm>
#include <map>

namespace luft::desk {
namespace {

constexpr double kLeading = 1.2; ///< from line to line, in heights of a letter
constexpr int kRail = 6;         ///< width of what shows how far it is scrolled
constexpr int kAboveSpoken = 4;  ///< the spoken line is kept at a 4th of the height

int line_height(int size) {
    return static_cast<int>(size * kLeading);
}

/// About how wide a text is in any size: each character is measured once. Measuring whole lines in every size
/// that is tried took 0.1 s and more for a long talk.
class RoughWidths {
  public:
    explicit RoughWidths(wxDC& dc) : dc_(dc), before_(dc.GetFont()) {
        dc_.SetFont(sized(before_, kMeasured));
    }
    RoughWidths(const RoughWidths&) = delete;
    RoughWidths& operator=(const RoughWidths&) = delete;
    ~RoughWidths() { dc_.SetFont(before_); }

    int of(const std::string& text, int size) {
        double sum = 0;
        for (const wxUniChar c : shown(text))
            sum += of(c);
        return static_cast<int>(sum * size / kMeasured);
    }

  private:
    static constexpr int kMeasured = 100;

    double of(wxUniChar c) {
        const auto [at, fresh] = widths_.try_emplace(c.GetValue(), 0);
        if (fresh) at->second = dc_.GetTextExtent(wxString(c)).x;
        return at->second;
    }

    wxDC& dc_;
    wxFont before_;
    std::map<wxUniChar::value_type, int> widths_;
};

} // namespace

wxFont sized(const wxFont& font, int size, bool bold) {
    wxFont other = bold ? font.Bold() : font;
    other.SetPixelSize(wxSize(0, std::max(1, size)));
    return other;
}

int draw_line(wxDC& dc, const wxString& words, const wxRect& place, int alignment) {
    const wxString cut = wxControl::Ellipsize(words, dc, wxELLIPSIZE_END, place.width);
    dc.DrawLabel(cut, place, alignment | wxALIGN_CENTRE_VERTICAL);
    return dc.GetTextExtent(cut).x;
}

void Prompt::lay_out(wxDC& dc, const std::string& text, const wxRect& area, Sizes sizes) {
    if (text == text_ && area == area_) return;
    text_ = text;
    area_ = area;
    const auto fits = [&](const std::vector<std::string>& lines, int size) {
        return static_cast<int>(lines.size()) * line_height(size) <= area.height;
    };
    {
        RoughWidths widths(dc);
        size_ = largest(sizes.least, sizes.most, [&](int size) {
            return fits(
                wrapped(text, area.width, [&](const std::string& piece) { return widths.of(piece, size); }),
                size);
        });
    }
    const wxFont font = dc.GetFont();
    const auto lay = [&] {
        font_ = sized(font, size_);
        dc.SetFont(font_);
        lines_ = wrapped(text, area.width,
                         [&](const std::string& piece) { return dc.GetTextExtent(shown(piece)).x; });
    };
    for (lay(); size_ > sizes.least && !fits(lines_, size_); lay())
        --size_;
    dc.SetFont(font);
}

int Prompt::hidden() const {
    const int seen = std::max(1, area_.height / std::max(1, line_height(size_)));
    return std::max(0, static_cast<int>(lines_.size()) - seen);
}

int Prompt::first_line(double share, int lines) const {
    const int seen = static_cast<int>(lines_.size()) - hidden();
    const int spoken = static_cast<int>(spoken_line(lines_, share));
    return std::clamp(std::max(0, spoken - seen / kAboveSpoken) + lines, 0, hidden());
}

void Prompt::draw(wxDC& dc, double share, int lines) const {
    const int height = line_height(size_);
    const int first = first_line(share, lines), seen = static_cast<int>(lines_.size()) - hidden();
    int y = area_.y + std::max(0, (area_.height - seen * height) / 2);
    dc.SetFont(font_);
    for (int i = first; i < first + seen; ++i, y += height)
        dc.DrawText(shown(lines_[static_cast<std::size_t>(i)]), area_.x, y);
    if (hidden() == 0) return;
    const int whole = static_cast<int>(lines_.size());
    dc.SetPen(*wxTRANSPARENT_PEN);
    dc.SetBrush(wxBrush(dc.GetTextForeground()));
    dc.DrawRectangle(area_.GetRight() + 3 * kRail, area_.y + area_.height * first / whole, kRail,
                     area_.height * seen / whole);
}

} // namespace luft::desk
