// The sheet in the window: rows as pictures that are drawn once, the playhead and the mouse over them.
#pragma once

#include "desk/work/session.h"
#include "sheet/draw.h"
#include "sheet/heights.h"
#include "sheet/hit.h"
#include "sheet/word_places.h"

#include <wx/scrolwin.h>
#include <wx/timer.h>
#include <wx/wx.h>

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace luft::desk {

class SheetView : public wxScrolled<wxWindow> {
  public:
    /// What the mouse asks for; the frame does it.
    struct Wishes {
        std::function<void(Seconds)> go_to;                   ///< playhead
        std::function<void(Span)> make_moment;                ///< dragged over the ribbon
        std::function<void(project::MarkId, Span)> move_mark; ///< by its end, or as a whole
        std::function<void(project::MomentId, Span)> move_moment;
        std::function<void(project::SungWordId, Seconds)> move_word; ///< along its row
        std::function<void()> edit; ///< double click: open what is selected for writing
    };

    SheetView(wxWindow* parent, Session& session, Wishes wishes);

    /// Moves the playhead; while it plays its row is kept in sight.
    void set_playhead(Seconds time, bool playing);
    [[nodiscard]] Seconds playhead() const { return playhead_; }

    /// Only the moments for which this is true; all for an empty one.
    void show_only(std::function<bool(const project::Moment&)> wanted);
    void zoom(double factor); ///< along the line
    void zoom_fit();
    void stretch(double factor); ///< up the line
    /// Scrolls so that what is at that time is seen.
    void reveal(Seconds time);
    /// Draws everything anew: other colours, other contents.
    void renew();

    /// What stands on the paper while there is nothing to draw.
    void say_when_empty(const wxString& words);

    [[nodiscard]] const sheet::Layout* layout() const { return layout_.get(); }

    /// Paints so many times, scrolled on by `step` units and with the playhead moved each time: seconds a
    /// frame, for the benchmark.
    std::vector<double> measure_painting(int frames, int step);

  private:
    struct Drag;

    void paint(wxPaintEvent&);
    void on_size(wxSizeEvent&);
    void mouse(wxMouseEvent& event);
    void press(double x, double y);
    void drag_to(double x, double y);
    void release(double x, double y);
    void point_at(double x, double y);

    void lay_out();
    void forget_rows();
    const wxBitmap& row_picture(std::size_t row);
    const wxBitmap& legend_picture();
    /// Draws one row just outside of what is seen, if there is one that isn't drawn yet; false when there is
    /// none.
    bool draw_ahead();
    void draw_overlays(wxDC& dc);
    void refresh_row(std::size_t row);
    void refresh_playhead(Seconds time);
    [[nodiscard]] sheet::Look look() const;
    [[nodiscard]] sheet::Point on_sheet(const wxPoint& point) const;
    /// Whether a drag from there moves the mark's end: a note's only once it is selected, since a moment is
    /// most often dragged from where a note starts.
    [[nodiscard]] bool gives_edge(const sheet::MarkHit& hit) const;
    [[nodiscard]] Seconds snapped(std::size_t row, double x) const;
    void watch(const Session::Change& change);

    Session& session_;
    Wishes wishes_;
    sheet::Canvas measuring_;
    sheet::WordWidths widths_;
    sheet::Heights heights_;
    sheet::View view_;
    bool fitted_ = true; ///< the scale follows the window's width
    std::unique_ptr<sheet::Layout> layout_;
    std::vector<wxBitmap> rows_; ///< empty where not drawn yet
    std::size_t drawn_ = 0;      ///< how many aren't
    wxBitmap legend_;
    double legend_height_ = 0;
    Seconds playhead_{0};
    bool playing_ = false;
    std::unique_ptr<Drag> drag_;
    wxString told_;  ///< the pointer's text
    wxString empty_; ///< see say_when_empty
};

/// The sheet's colours for the system's theme.
sheet::Colours system_colours();
wxColour to_wx(sheet::Colour colour);

} // namespace luft::desk
