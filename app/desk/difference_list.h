// What the lower performance does otherwise, one under the other, each with its sentence.
#pragma once

#include "desk/work/match.h"
#include "sheet/canvas.h"

#include <wx/scrolwin.h>
#include <wx/wx.h>

#include <functional>
#include <optional>
#include <vector>

namespace luft::desk {

class DifferenceList : public wxScrolled<wxWindow> {
  public:
    struct Wishes {
        std::function<void(std::size_t difference)> select;
        std::function<void()> play; ///< a double click
    };

    DifferenceList(wxWindow* parent, Wishes wishes);

    /// `order`: indices of the differences.
    void show(std::shared_ptr<const Matched> matched, std::vector<std::size_t> order);
    /// Marks one and scrolls it into sight.
    void select(std::optional<std::size_t> difference);

  private:
    struct Card {
        std::size_t difference = 0;
        int number = 0; ///< as on the sheet; 0 for the whole
        int top = 0, height = 0;
    };
    void lay_out();
    int draw(sheet::Canvas& canvas, const Card& card, bool measure) const;
    void paint(wxPaintEvent&);

    Wishes wishes_;
    std::shared_ptr<const Matched> matched_;
    std::vector<std::size_t> order_;
    std::vector<Card> cards_;
    std::optional<std::size_t> selected_;
    sheet::Canvas measuring_;
};

} // namespace luft::desk
