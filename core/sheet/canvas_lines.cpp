// Paragraphs line by line, for words that go on on the next page.
#include "sheet/canvas.h"
#include "sheet/surface.h"

namespace luft::sheet {
namespace {

using Lines = Handle<PangoLayoutIter, pango_layout_iter_free>;

double units(int pango) {
    return pango / double(PANGO_SCALE);
}

} // namespace

std::vector<double> Canvas::line_heights(double width, std::string_view words, Type type) const {
    const Lines at(pango_layout_get_iter(surface_->layout(words, type, width, 0)));
    std::vector<double> heights;
    do {
        int top = 0, bottom = 0;
        pango_layout_iter_get_line_yrange(at.get(), &top, &bottom);
        heights.push_back(units(bottom - top));
    } while (pango_layout_iter_next_line(at.get()) != FALSE);
    return heights;
}

void Canvas::lines(double x, double y, double width, std::string_view words, Type type, Colour colour,
                   std::size_t first, std::size_t count) {
    const Lines at(pango_layout_get_iter(surface_->layout(words, type, width, 0)));
    cairo_set_source_rgba(surface_->cr(), colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0,
                          colour.cover);
    std::size_t line = 0;
    int start = 0;
    do {
        if (line >= first + count) return;
        int top = 0, bottom = 0;
        pango_layout_iter_get_line_yrange(at.get(), &top, &bottom);
        if (line == first) start = top;
        if (line++ < first) continue;
        PangoRectangle set{};
        pango_layout_iter_get_line_extents(at.get(), nullptr, &set);
        cairo_move_to(surface_->cr(), x + units(set.x),
                      y + units(pango_layout_iter_get_baseline(at.get()) - start));
        pango_cairo_show_layout_line(surface_->cr(), pango_layout_iter_get_line_readonly(at.get()));
    } while (pango_layout_iter_next_line(at.get()) != FALSE);
}

} // namespace luft::sheet
