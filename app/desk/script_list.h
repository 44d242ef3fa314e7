// The script as one reads it: talk in cards, the music between them, in the order of the programme.
#pragma once

#include "desk/work/script_rows.h"
#include "sheet/canvas.h"

#include <wx/scrolwin.h>
#include <wx/wx.h>

#include <functional>
#include <optional>
#include <vector>

namespace luft::desk {

class ScriptList : public wxScrolled<wxWindow> {
  public:
    struct Wishes {
        std::function<void(std::size_t row)> select;
        std::function<void()> edit; ///< double click: write the words
        /// A part was dragged between two others (none at the script's ends).
        std::function<void(project::ScriptItemId item, std::optional<project::ScriptItemId> before,
                           std::optional<project::ScriptItemId> after)>
            move;
    };

    ScriptList(wxWindow* parent, Wishes wishes);

    /// `warnings`: the sheet's, which the rows point into.
    void show(std::vector<ScriptRow> rows, const std::vector<script::Warning>& warnings);
    /// Marks a row as selected and scrolls it into sight.
    void select(std::optional<std::size_t> row);
    void say_when_empty(const wxString& words);

  private:
    struct Place {
        int top = 0, height = 0;
    };
    struct Drag {
        std::size_t row = 0;
        int from = 0, now = 0;
        bool moving = false;
    };

    void lay_out();
    int draw_row(sheet::Canvas& canvas, std::size_t row, bool measure) const;
    void draw_card(sheet::Canvas& canvas, const ScriptRow& row, bool selected, int height) const;
    void paint(wxPaintEvent&);
    void mouse(wxMouseEvent& event);
    void drop();
    [[nodiscard]] std::optional<std::size_t> row_under(int y) const;
    /// The gap that a dragged row would go into: before the row of that index.
    [[nodiscard]] std::size_t gap_at(int y) const;

    Wishes wishes_;
    std::vector<ScriptRow> rows_;
    std::vector<std::vector<std::string>> complaints_; ///< of each row
    std::vector<Place> places_;
    std::optional<std::size_t> selected_;
    std::optional<Drag> drag_;
    sheet::Canvas measuring_;
    wxString empty_;
};

} // namespace luft::desk
