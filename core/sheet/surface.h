// The Cairo and Pango handles behind a Canvas; for this folder's own sources only.
#pragma once

#include "sheet/canvas.h"

#include <cairo/cairo-pdf.h>
#include <cairo/cairo-svg.h>
#include <cairo/cairo.h>
#include <pango/pangocairo.h>

#include <filesystem>
#include <memory>
#include <string>

namespace luft::sheet {

template <auto Close>
struct Closer {
    template <class T>
    void operator()(T* handle) const {
        Close(handle);
    }
};
template <class T, auto Close>
using Handle = std::unique_ptr<T, Closer<Close>>;

struct Canvas::Surface {
    std::unique_ptr<std::string> written; ///< an SVG's or a PDF's, so far; outlives the surface
    Handle<cairo_surface_t, cairo_surface_destroy> surface;
    Handle<cairo_t, cairo_destroy> context;
    Handle<PangoLayout, g_object_unref> words;
    std::filesystem::path file; ///< where a finished PDF goes; empty for a picture

    explicit Surface(cairo_surface_t* s);
    ~Surface() = default;
    Surface(const Surface&) = delete;
    Surface& operator=(const Surface&) = delete;

    [[nodiscard]] cairo_t* cr() const { return context.get(); }
    /// The one layout of this canvas, set up anew. `width` 0 for a single line.
    PangoLayout* layout(std::string_view text, Type type, double width, int most_lines) const;
};

} // namespace luft::sheet
