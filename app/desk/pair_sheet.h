// Two performances below each other in the window: rows as pictures that are drawn once, playheads and the
// mouse over them.
#pragma once

#include "desk/work/match.h"
#include "sheet/pair_draw.h"
#include "sheet/pair_hit.h"

#include <wx/scrolwin.h>
#include <wx/wx.h>

#include <array>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace luft::desk {

class PairSheet : public wxScrolled<wxWindow> {
  public:
    struct Wishes {
        std::function<void(std::size_t difference)> select;
        std::function<void(sheet::Which, Seconds own)> place; ///< a click into a line
        std::function<void()> play;                           ///< a double click
    };
    /// One time in each performance.
    using Times = std::array<std::optional<Seconds>, 2>;

    PairSheet(wxWindow* parent, Wishes wishes);

    /// What is shown; null for nothing.
    void show(std::shared_ptr<const Matched> matched, std::vector<compare::Pair> pins);
    void show_as_sung(bool as_sung);
    void select(std::optional<std::size_t> difference);
    void set_playheads(const Times& times, bool follow);
    void set_places(const Times& places);
    /// Scrolls so that the difference, or what is sung then, is seen.
    void reveal(std::size_t difference);
    void reveal(sheet::Which which, Seconds own);
    void zoom(double factor); ///< along the line
    void zoom_fit();
    void stretch(double factor); ///< up the line
    void renew();                ///< other colours
    void say_when_empty(const wxString& words);

  private:
    void lay_out();
    void paint(wxPaintEvent&);
    void mouse(wxMouseEvent& event);
    const wxBitmap& picture(std::size_t part); ///< 0 is the head, then the rows
    void draw_time(wxDC& dc, sheet::Which which, Seconds own, const wxPen& pen, bool flag) const;
    void refresh_row(std::optional<std::size_t> row);
    void refresh_times(const Times& times);
    void reveal_row(std::optional<std::size_t> row);

    Wishes wishes_;
    sheet::Canvas measuring_;
    sheet::PairView view_;
    bool fitted_ = true; ///< the scale follows the window's width
    std::shared_ptr<const Matched> matched_;
    std::vector<compare::Pair> pins_;
    std::unique_ptr<sheet::PairLayout> layout_;
    std::vector<wxBitmap> pictures_; ///< empty where not drawn yet
    std::optional<std::size_t> selected_;
    Times playheads_, places_;
    wxString empty_, told_;
};

} // namespace luft::desk
