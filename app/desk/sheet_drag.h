// A drag over the sheet, while it lasts.
#pragma once

#include "desk/sheet_view.h"

namespace luft::desk {

struct SheetView::Drag {
    enum class What {
        span, ///< over the ribbon: a moment to be
        mark_start,
        mark_end,
        mark_whole, ///< a breath or a switch
        moment_start,
        moment_end,
        word,    ///< under the line
        nothing, ///< only a click
    };
    What what = What::nothing;
    std::size_t row = 0;
    double x = 0; ///< where it began
    Seconds time; ///< likewise
    Span span;    ///< as it would be now
    Span before;  ///< of the mark or moment that is moved
    Selection grabbed;
    project::SungWordId word; ///< likewise
    bool moved = false;
};

} // namespace luft::desk
