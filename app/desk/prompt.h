// Words to be read from two metres.
#pragma once

#include <wx/dc.h>
#include <wx/gdicmn.h>

#include <string>
#include <vector>

namespace luft::desk {

/// A text as large as it fits into a rectangle; in the least size and scrolled when it doesn't.
class Prompt {
  public:
    /// Least and most height of the letters, in pixels.
    struct Sizes {
        int least = 40;
        int most = 120;
    };

    /// Cheap when nothing has changed since.
    void lay_out(wxDC& dc, const std::string& text, const wxRect& area, Sizes sizes);
    /// `share`: how much of the talk has passed, 0 to 1; `lines` further on by hand. In the colour that is
    /// set.
    void draw(wxDC& dc, double share, int lines) const;

    /// How far it can be scrolled, in lines; 0 when all of it is seen.
    [[nodiscard]] int hidden() const;
    [[nodiscard]] int size() const { return size_; } ///< of the letters, in pixels

  private:
    [[nodiscard]] int first_line(double share, int lines) const;

    std::string text_;
    wxRect area_;
    wxFont font_;
    int size_ = 0;
    std::vector<std::string> lines_;
};

/// The font in another size; `size` is the height of a letter with its room above and below, in pixels.
wxFont sized(const wxFont& font, int size, bool bold = false);

/// Draws one line, cut with "…" when it is too wide, and returns its width.
int draw_line(wxDC& dc, const wxString& words, const wxRect& place, int alignment = wxALIGN_LEFT);

} // namespace luft::desk
