#include "sheet/pages.h"

#include "sheet/draw.h"

#include <string>

namespace luft::sheet {
namespace {

constexpr double kEdge = 36;   ///< half an inch of white
constexpr double kZoom = 0.62; ///< print is held nearer than a screen
constexpr double kFoot = 16;

std::string title_of(const profile::Source& source) {
    return source.piece.title.empty() ? "Untitled" : source.piece.title;
}

std::string subtitle_of(const profile::Source& source) {
    std::string words = source.performance.performer;
    if (words.empty()) words = source.performance.label;
    if (!source.piece.writer.empty())
        words += words.empty() ? source.piece.writer : "  ·  written by " + source.piece.writer;
    return words;
}

/// Breaks rows onto pages and numbers them.
class Printer {
  public:
    Printer(Canvas& canvas, const Layout& layout) : canvas_(canvas), layout_(layout) {}

    void heading() {
        const auto& source = layout_.source();
        canvas_.text(kEdge, kEdge + 18, title_of(source), {20, true, false}, look_.colours.ink);
        canvas_.text(kEdge, kEdge + 34, subtitle_of(source), {11, false, false}, look_.colours.soft);
        y_ = kEdge + 46;
    }

    void row(std::size_t i) {
        const double height = layout_.places()[i].height * kZoom;
        if (y_ + height > bottom() && y_ > kEdge) turn();
        drawn([&] { draw_row(canvas_, layout_, i, look_); });
        y_ += height;
    }

    void legend() {
        // Measured by drawing it where nobody sees it.
        Canvas aside = Canvas::picture(1, 1);
        const double height = draw_legend(aside, 0, 0, layout_.view().width, look_.colours) * kZoom;
        if (y_ + height + 12 > bottom()) turn();
        y_ += 12;
        drawn([&] { draw_legend(canvas_, 8, 0, layout_.view().width - 8, look_.colours); });
    }

    int finish() {
        number();
        canvas_.next_page();
        canvas_.finish();
        return page_;
    }

  private:
    [[nodiscard]] static double bottom() { return kPageHeight - kEdge - kFoot; }

    template <class Draw>
    void drawn(Draw draw) {
        canvas_.save();
        canvas_.move(kEdge, y_);
        canvas_.zoom(kZoom);
        draw();
        canvas_.restore();
    }
    void number() {
        canvas_.text(kPageWidth - kEdge, kPageHeight - kEdge + 4, std::to_string(page_), {10, false, false},
                     look_.colours.soft, Anchor::end);
        canvas_.text(kEdge, kPageHeight - kEdge + 4,
                     "Estimated from sound, corrected by the coach as marked. Diagnoses nothing.",
                     {9, false, true}, look_.colours.soft);
    }
    void turn() {
        number();
        canvas_.next_page();
        ++page_;
        y_ = kEdge;
    }

    Canvas& canvas_;
    const Layout& layout_;
    Look look_{.colours = on_paper()};
    double y_ = kEdge;
    int page_ = 1;

    /// White paper is not painted.
    static Colours on_paper() {
        Colours c = light_colours();
        c.paper = {255, 255, 255};
        return c;
    }
};

} // namespace

int write_pdf(const profile::Source& source, const std::filesystem::path& file, const Progress& progress) {
    Canvas canvas = Canvas::pdf(file, kPageWidth, kPageHeight);
    View view;
    view.width = (kPageWidth - 2 * kEdge) / kZoom;
    view.margin = source.moments.empty() ? 0 : 230;
    view.per_second = fitting_scale(source, view.width, view.margin);
    const Layout layout(source, view, [&](double width, std::string_view words, Type type, int most) {
        return canvas.paragraph_height(width, words, type, most);
    });
    Printer printer(canvas, layout);
    printer.heading();
    for (std::size_t i = 0; i < layout.rows().size(); ++i) {
        progress.step(static_cast<double>(i) / static_cast<double>(layout.rows().size()), "printing");
        printer.row(i);
    }
    printer.legend();
    return printer.finish();
}

} // namespace luft::sheet
