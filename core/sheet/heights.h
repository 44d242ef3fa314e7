// Heights of paragraphs, each set once or not at all.
#pragma once

#include "sheet/canvas.h"

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace luft::sheet {

/// Setting a paragraph costs some 30 microseconds, and a sheet is laid out again after every edit: with
/// thousands of moments each is set once, and again only when its words or its width change. Of a plain text
/// only the words are set that are met for the first time (plain_lines.h).
class Heights {
  public:
    /// The canvas must outlive it.
    explicit Heights(const Canvas& canvas) : canvas_(&canvas) {}
    /// As Canvas::paragraph_height.
    double of(double width, std::string_view words, Type type, int most_lines);

  private:
    /// What is known of one type.
    struct Face {
        Type type;
        double space = 0;
        std::unordered_map<std::string, double> widths; ///< of words
        std::vector<double> heights;                    ///< of one line, of two, and so on
    };
    Face& face_of(Type type);
    double width_of(Face& face, std::string_view word) const;
    double height_of(Face& face, int lines) const;
    [[nodiscard]] std::optional<double> plain_height(double width, std::string_view words, Type type,
                                                     int most_lines);

    const Canvas* canvas_;
    std::unordered_map<std::string, double> known_;
    std::vector<Face> faces_;
};

} // namespace luft::sheet
