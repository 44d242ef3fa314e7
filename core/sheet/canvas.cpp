#include "sheet/canvas.h"

#include "base/error.h"
#include "base/text.h"
#include "sheet/surface.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace luft::sheet {
namespace {

void set_colour(cairo_t* cr, Colour c) {
    cairo_set_source_rgba(cr, c.red / 255.0, c.green / 255.0, c.blue / 255.0, c.cover);
}

void trace(cairo_t* cr, const Path& path) {
    cairo_new_path(cr);
    for (const auto& [step, p] : path.parts)
        switch (step) {
        case Path::Step::move:
            cairo_move_to(cr, p[0].x, p[0].y);
            break;
        case Path::Step::line:
            cairo_line_to(cr, p[0].x, p[0].y);
            break;
        case Path::Step::curve:
            cairo_curve_to(cr, p[0].x, p[0].y, p[1].x, p[1].y, p[2].x, p[2].y);
            break;
        case Path::Step::close:
            cairo_close_path(cr);
            break;
        }
}

void trace_box(cairo_t* cr, double x, double y, double width, double height, double rounded) {
    const double r = std::min({rounded, width / 2, height / 2});
    cairo_new_path(cr);
    if (r <= 0) return cairo_rectangle(cr, x, y, width, height);
    const double quarter = std::acos(0.0);
    cairo_arc(cr, x + width - r, y + r, r, -quarter, 0);
    cairo_arc(cr, x + width - r, y + height - r, r, 0, quarter);
    cairo_arc(cr, x + r, y + height - r, r, quarter, 2 * quarter);
    cairo_arc(cr, x + r, y + r, r, 2 * quarter, 3 * quarter);
    cairo_close_path(cr);
}

void set_line(cairo_t* cr, double width, Line line) {
    cairo_set_line_width(cr, width);
    const double dot[] = {1.0, 2.4}, dash[] = {5.0, 3.0};
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
    if (line == Line::solid) cairo_set_dash(cr, nullptr, 0, 0);
    if (line == Line::dotted) cairo_set_dash(cr, dot, 2, 0);
    if (line == Line::dashed) cairo_set_dash(cr, dash, 2, 0);
}

/// Four units of stripe and ground, slanting up to the right.
Handle<cairo_pattern_t, cairo_pattern_destroy> stripes(Colour stripe, Colour ground) {
    Handle<cairo_surface_t, cairo_surface_destroy> tile(
        cairo_image_surface_create(CAIRO_FORMAT_ARGB32, 5, 5));
    Handle<cairo_t, cairo_destroy> cr(cairo_create(tile.get()));
    set_colour(cr.get(), ground);
    cairo_paint(cr.get());
    set_colour(cr.get(), stripe);
    cairo_set_line_width(cr.get(), 1.9);
    for (const double shift : {-5.0, 0.0, 5.0}) {
        cairo_move_to(cr.get(), shift - 1, 6);
        cairo_line_to(cr.get(), shift + 6, -1);
    }
    cairo_stroke(cr.get());
    Handle<cairo_pattern_t, cairo_pattern_destroy> pattern(cairo_pattern_create_for_surface(tile.get()));
    cairo_pattern_set_extend(pattern.get(), CAIRO_EXTEND_REPEAT);
    return pattern;
}

} // namespace

void Canvas::clear(Colour colour) {
    set_colour(surface_->cr(), colour);
    cairo_paint(surface_->cr());
}

void Canvas::fill(const Path& path, Colour colour) {
    trace(surface_->cr(), path);
    set_colour(surface_->cr(), colour);
    cairo_fill(surface_->cr());
}

void Canvas::fill_striped(const Path& path, Colour stripe, Colour ground) {
    trace(surface_->cr(), path);
    const auto pattern = stripes(stripe, ground);
    cairo_set_source(surface_->cr(), pattern.get());
    cairo_fill(surface_->cr());
}

void Canvas::stroke(const Path& path, Colour colour, double width, Line line) {
    trace(surface_->cr(), path);
    set_colour(surface_->cr(), colour);
    set_line(surface_->cr(), width, line);
    cairo_stroke(surface_->cr());
}

void Canvas::line(double x1, double y1, double x2, double y2, Colour colour, double width, Line line) {
    stroke(Path().move(x1, y1).line(x2, y2), colour, width, line);
}

void Canvas::box(double x, double y, double width, double height, Colour colour, double rounded) {
    trace_box(surface_->cr(), x, y, width, height, rounded);
    set_colour(surface_->cr(), colour);
    cairo_fill(surface_->cr());
}

void Canvas::frame(double x, double y, double width, double height, Colour colour, double line_width,
                   double rounded, Line line) {
    trace_box(surface_->cr(), x, y, width, height, rounded);
    set_colour(surface_->cr(), colour);
    set_line(surface_->cr(), line_width, line);
    cairo_stroke(surface_->cr());
}

void Canvas::text(double x, double y, std::string_view words, Type type, Colour colour, Anchor anchor) {
    PangoLayout* layout = surface_->layout(words, type, 0, 0);
    int width = 0, height = 0;
    pango_layout_get_size(layout, &width, &height);
    const double wide = width / double(PANGO_SCALE);
    const double base = pango_layout_get_baseline(layout) / double(PANGO_SCALE);
    const double left = anchor == Anchor::start ? x : anchor == Anchor::middle ? x - wide / 2 : x - wide;
    set_colour(surface_->cr(), colour);
    cairo_move_to(surface_->cr(), left, y - base);
    pango_cairo_show_layout(surface_->cr(), layout);
}

double Canvas::paragraph(double x, double y, double width, std::string_view words, Type type, Colour colour,
                         int most_lines) {
    PangoLayout* layout = surface_->layout(words, type, width, most_lines);
    int wide = 0, high = 0;
    pango_layout_get_size(layout, &wide, &high);
    set_colour(surface_->cr(), colour);
    cairo_move_to(surface_->cr(), x, y);
    pango_cairo_show_layout(surface_->cr(), layout);
    return high / double(PANGO_SCALE);
}

Extent Canvas::extent(std::string_view words, Type type) const {
    int width = 0, height = 0;
    pango_layout_get_size(surface_->layout(words, type, 0, 0), &width, &height);
    return {width / double(PANGO_SCALE), height / double(PANGO_SCALE)};
}

double Canvas::paragraph_height(double width, std::string_view words, Type type, int most_lines) const {
    int wide = 0, high = 0;
    pango_layout_get_size(surface_->layout(words, type, width, most_lines), &wide, &high);
    return high / double(PANGO_SCALE);
}

void Canvas::save() {
    cairo_save(surface_->cr());
}
void Canvas::restore() {
    cairo_restore(surface_->cr());
}
void Canvas::move(double dx, double dy) {
    cairo_translate(surface_->cr(), dx, dy);
}
void Canvas::zoom(double factor) {
    cairo_scale(surface_->cr(), factor, factor);
}
void Canvas::clip(double x, double y, double width, double height) {
    cairo_rectangle(surface_->cr(), x, y, width, height);
    cairo_clip(surface_->cr());
}

void Canvas::image(double x, double y, double width, double height, std::span<const std::uint8_t> rgb,
                   int columns, int rows) {
    if (columns <= 0 || rows <= 0 || rgb.size() < std::size_t(columns) * std::size_t(rows) * 3) return;
    Handle<cairo_surface_t, cairo_surface_destroy> picture(
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, columns, rows));
    if (cairo_surface_status(picture.get()) != CAIRO_STATUS_SUCCESS) return;
    cairo_surface_flush(picture.get());
    const int stride = cairo_image_surface_get_stride(picture.get());
    unsigned char* to = cairo_image_surface_get_data(picture.get());
    for (int row = 0; row < rows; ++row)
        for (int column = 0; column < columns; ++column) {
            const auto* from = &rgb[(std::size_t(row) * std::size_t(columns) + std::size_t(column)) * 3];
            const std::uint32_t pixel =
                (std::uint32_t(from[0]) << 16) | (std::uint32_t(from[1]) << 8) | std::uint32_t(from[2]);
            reinterpret_cast<std::uint32_t*>(to + std::ptrdiff_t(row) * stride)[column] = pixel;
        }
    cairo_surface_mark_dirty(picture.get());
    cairo_save(surface_->cr());
    cairo_translate(surface_->cr(), x, y);
    cairo_scale(surface_->cr(), width / columns, height / rows);
    cairo_set_source_surface(surface_->cr(), picture.get(), 0, 0);
    cairo_paint(surface_->cr());
    cairo_restore(surface_->cr());
}

} // namespace luft::sheet
