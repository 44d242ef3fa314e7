// What lies under a point of the sheet.
#pragma once

#include "sheet/layout.h"

#include <variant>

namespace luft::sheet {

/// A mark, and which part of it would be moved by dragging from there.
struct MarkHit {
    const project::Mark* mark = nullptr;
    enum class Part { body, start, end } part = Part::body;
};

/// A moment's card or bracket.
struct MomentHit {
    std::size_t moment = 0; ///< index into the source's moments
    bool card = false;
    enum class Part { body, start, end } part = Part::body;
};

/// A word under the line.
struct WordHit {
    const project::SungWord* word = nullptr;
    std::size_t row = 0;
};

/// An empty place of a row.
struct PlaceHit {
    std::size_t row = 0;
    Seconds time;
};

/// Nothing, or one of these.
using Hit = std::variant<std::monostate, MarkHit, MomentHit, WordHit, PlaceHit>;

/// (x, y) from the sheet's top left corner. Words are below everything else of their row. Signs above the
/// staff win over the ribbon, the ribbon over the phrase, small things over large ones.
Hit hit(const Layout& layout, double x, double y);

} // namespace luft::sheet
