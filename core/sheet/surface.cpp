#include "sheet/surface.h"

#include "base/error.h"
#include "base/shown_text.h"
#include "base/write_file.h"
#include "sheet/breakable.h"

#include <cmath>

namespace luft::sheet {
namespace {

constexpr const char* kFamily = "Serif"; ///< whatever the system reads by: a score is set in serifs

[[noreturn]] void refuse(const std::filesystem::path& file, const std::string& why) {
    throw Error(Fault::cannot_write, "'" + file.filename().string() + "' can't be written: " + why + ".",
                "Choose another folder, or make room.");
}

/// Takes what Cairo writes.
cairo_status_t append(void* into, const unsigned char* data, unsigned int length) {
    static_cast<std::string*>(into)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
}

} // namespace

Canvas::Surface::Surface(cairo_surface_t* s)
    : surface(s), context(cairo_create(s)), words(pango_cairo_create_layout(context.get())) {
    if (cairo_status(context.get()) != CAIRO_STATUS_SUCCESS)
        throw Error(Fault::internal, std::string("Nothing can be drawn: ") +
                                         cairo_status_to_string(cairo_status(context.get())) + ".");
}

PangoLayout* Canvas::Surface::layout(std::string_view text, Type type, double width, int most_lines) const {
    PangoLayout* layout = words.get();
    Handle<PangoFontDescription, pango_font_description_free> font(
        pango_font_description_from_string(kFamily));
    pango_font_description_set_absolute_size(font.get(), type.size * PANGO_SCALE);
    pango_font_description_set_weight(font.get(), type.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_style(font.get(), type.italic ? PANGO_STYLE_ITALIC : PANGO_STYLE_NORMAL);
    pango_layout_set_font_description(layout, font.get());
    if (width <= 0 || most_lines > 0) text = beginning(text, std::max(most_lines, 1));
    const std::string fine = breakable(shown(text));
    pango_layout_set_width(layout, width > 0 ? static_cast<int>(width * PANGO_SCALE) : -1);
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    pango_layout_set_ellipsize(layout, most_lines > 0 ? PANGO_ELLIPSIZE_END : PANGO_ELLIPSIZE_NONE);
    pango_layout_set_height(layout, most_lines > 0 ? -most_lines : -1);
    pango_layout_set_text(layout, fine.data(), static_cast<int>(fine.size()));
    pango_cairo_update_layout(cr(), layout);
    return layout;
}

Canvas::Canvas(std::unique_ptr<Surface> surface) : surface_(std::move(surface)) {}
Canvas::Canvas(Canvas&&) noexcept = default;
Canvas& Canvas::operator=(Canvas&&) noexcept = default;
Canvas::~Canvas() = default;

Canvas Canvas::picture(int width, int height, double scale) {
    const auto pixels = [&](int units) { return std::max(1, static_cast<int>(std::lround(units * scale))); };
    auto surface = std::make_unique<Surface>(
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, pixels(width), pixels(height)));
    cairo_scale(surface->cr(), scale, scale);
    return Canvas(std::move(surface));
}

Canvas Canvas::pdf(const std::filesystem::path& file, double width, double height) {
    auto text = std::make_unique<std::string>();
    auto surface =
        std::make_unique<Surface>(cairo_pdf_surface_create_for_stream(append, text.get(), width, height));
    surface->written = std::move(text);
    surface->file = file;
    return Canvas(std::move(surface));
}

Canvas Canvas::svg(double width, double height) {
    auto text = std::make_unique<std::string>();
    auto surface =
        std::make_unique<Surface>(cairo_svg_surface_create_for_stream(append, text.get(), width, height));
    surface->written = std::move(text);
    cairo_svg_surface_set_document_unit(surface->surface.get(), CAIRO_SVG_UNIT_PX);
    return Canvas(std::move(surface));
}

std::string Canvas::take_svg() {
    cairo_surface_t* surface = surface_->surface.get();
    cairo_surface_finish(surface);
    if (cairo_surface_status(surface) != CAIRO_STATUS_SUCCESS)
        throw Error(Fault::internal, std::string("A picture can't be drawn: ") +
                                         cairo_status_to_string(cairo_surface_status(surface)) + ".");
    return std::move(*surface_->written);
}

void Canvas::next_page() {
    cairo_show_page(surface_->cr());
}

void Canvas::finish() {
    cairo_surface_t* surface = surface_->surface.get();
    cairo_surface_finish(surface);
    if (cairo_surface_status(surface) != CAIRO_STATUS_SUCCESS)
        refuse(surface_->file, cairo_status_to_string(cairo_surface_status(surface)));
    write_file(surface_->file, *surface_->written);
}

Canvas::Pixels Canvas::pixels() {
    cairo_surface_t* surface = surface_->surface.get();
    cairo_surface_flush(surface);
    const int height = cairo_image_surface_get_height(surface);
    const int stride = cairo_image_surface_get_stride(surface);
    return {{cairo_image_surface_get_data(surface), std::size_t(stride) * std::size_t(height)},
            cairo_image_surface_get_width(surface),
            height,
            stride};
}

void Canvas::write_png(const std::filesystem::path& file) {
    std::string bytes;
    const auto status = cairo_surface_write_to_png_stream(surface_->surface.get(), append, &bytes);
    if (status != CAIRO_STATUS_SUCCESS) refuse(file, cairo_status_to_string(status));
    write_file(file, bytes);
}

} // namespace luft::sheet
