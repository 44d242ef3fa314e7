// Small pictures as inline SVG.
#pragma once

#include <string>
#include <string_view>

namespace luft::exports {

/// A coordinate or length: one digit after the point, no trailing zero.
std::string svg_number(double v);

/// Builds one `<svg>` element. `style` is CSS, for instance "fill:var(--blue)": the page's custom properties
/// keep a picture readable on light, dark and paper. Text is escaped here; `style` and path data are not.
class Svg {
  public:
    /// In units of its own that are scaled to the width given by the page; `label` says what it shows to
    /// those who can't see it.
    Svg(double width, double height, std::string_view label);

    void define(std::string_view markup); ///< a pattern and the like
    void line(double x1, double y1, double x2, double y2, std::string_view style);
    void rect(double x, double y, double width, double height, std::string_view style);
    void circle(double x, double y, double radius, std::string_view style);
    void path(std::string_view data, std::string_view style);
    /// `anchor`: "start", "middle" or "end".
    void text(double x, double y, std::string_view words, double size, std::string_view anchor = "start",
              std::string_view style = {});

    [[nodiscard]] std::string str() const;

  private:
    std::string open_, body_;
};

} // namespace luft::exports
