// Heights of paragraphs, each set once.
#pragma once

#include "sheet/canvas.h"

#include <string>
#include <string_view>
#include <unordered_map>

namespace luft::sheet {

/// Setting a paragraph costs a tenth of a millisecond, and a sheet is laid out again after every edit: with
/// thousands of moments each is set once, and again only when its words or its width change.
class Heights {
  public:
    /// The canvas must outlive it.
    explicit Heights(const Canvas& canvas) : canvas_(&canvas) {}
    /// As Canvas::paragraph_height.
    double of(double width, std::string_view words, Type type, int most_lines);

  private:
    const Canvas* canvas_;
    std::unordered_map<std::string, double> known_;
};

} // namespace luft::sheet
