#include "sheet/pages.h"

#include "sheet/draw.h"
#include "sheet/word_places.h"

#include <string>

namespace luft::sheet {
namespace {

constexpr double kEdge = 36;   ///< half an inch of white
constexpr double kZoom = 0.62; ///< print is held nearer than a screen
constexpr double kHeading = 46, kFoot = 16, kBeforeLegend = 12;
constexpr double kBottom = kPageHeight - kEdge - kFoot;

/// White paper is not painted.
Look on_paper() {
    Look look;
    look.colours = light_colours();
    look.colours.paper = {255, 255, 255};
    return look;
}

View page_view(const profile::Source& source) {
    View view;
    view.width = (kPageWidth - 2 * kEdge) / kZoom;
    view.margin = source.moments.empty() ? 0 : 230;
    view.per_second = fitting_scale(source, view.width, view.margin);
    return view;
}

std::string subtitle_of(const profile::Source& source) {
    const auto& performance = source.performance;
    std::string words =
        performance.performer.empty() ? "Performance " + performance.label : performance.performer;
    if (source.piece.writer.empty()) return words;
    return words + (words.empty() ? "written by " : "  ·  written by ") + source.piece.writer;
}

void draw_heading(Canvas& canvas, const profile::Source& source, const Colours& colours) {
    const std::string title = source.piece.title.empty() ? "Untitled" : source.piece.title;
    canvas.text(kEdge, kEdge + 18, title, {20, true, false}, colours.ink);
    canvas.text(kEdge, kEdge + 34, subtitle_of(source), {11, false, false}, colours.soft);
}

void draw_foot(Canvas& canvas, int number, const Colours& colours) {
    const double y = kPageHeight - kEdge + 4;
    canvas.text(kEdge, y, "Estimated from sound, corrected by the coach as marked. Diagnoses nothing.",
                {9, false, true}, colours.soft);
    canvas.text(kPageWidth - kEdge, y, std::to_string(number), {10, false, false}, colours.soft, Anchor::end);
}

template <class Draw>
void zoomed(Canvas& canvas, double top, Draw draw) {
    canvas.save();
    canvas.move(kEdge, top);
    canvas.zoom(kZoom);
    draw();
    canvas.restore();
}

} // namespace

Pages::Pages(const profile::Source& source) : measuring_(Canvas::picture(1, 1)) {
    WordWidths widths(measuring_);
    layout_ = std::make_unique<Layout>(
        source, page_view(source),
        [this](double width, std::string_view words, Type type, int most) {
            return measuring_.paragraph_height(width, words, type, most);
        },
        [&](std::string_view word) { return widths.of(word); });
    pages_.emplace_back();
    double y = kEdge + kHeading;
    const auto make_room = [&](double height) {
        if (y + height <= kBottom || (pages_.back().rows.empty() && pages_.size() > 1)) return;
        pages_.emplace_back();
        y = kEdge;
    };
    for (std::size_t row = 0; row < layout_->rows().size(); ++row) {
        const double height = layout_->places()[row].height * kZoom;
        make_room(height);
        pages_.back().rows.push_back({row, y});
        y += height;
    }
    const double legend =
        draw_legend(measuring_, 0, 0, layout_->view().width - 8, light_colours()) * kZoom + kBeforeLegend;
    make_room(legend);
    pages_.back().legend = y + kBeforeLegend;
}

void Pages::draw(Canvas& canvas, int page) const {
    const Look look = on_paper();
    const Page& p = pages_.at(static_cast<std::size_t>(page));
    if (page == 0) draw_heading(canvas, layout_->source(), look.colours);
    for (const auto& piece : p.rows)
        zoomed(canvas, piece.top, [&] { draw_row(canvas, *layout_, piece.row, look); });
    if (p.legend)
        zoomed(canvas, *p.legend,
               [&] { draw_legend(canvas, 8, 0, layout_->view().width - 8, look.colours); });
    draw_foot(canvas, page + 1, look.colours);
}

std::optional<Seconds> Pages::time_at(int page, double x, double y) const {
    if (page < 0 || page >= count()) return std::nullopt;
    for (const auto& piece : pages_[static_cast<std::size_t>(page)].rows)
        if (y >= piece.top && y < piece.top + layout_->places()[piece.row].height * kZoom)
            return layout_->time_at(piece.row, (x - kEdge) / kZoom);
    return std::nullopt;
}

int write_pdf(const profile::Source& source, const std::filesystem::path& file, const Progress& progress) {
    Canvas canvas = Canvas::pdf(file, kPageWidth, kPageHeight);
    const Pages pages(source);
    for (int page = 0; page < pages.count(); ++page) {
        progress.step(static_cast<double>(page) / pages.count(), "printing");
        pages.draw(canvas, page);
        canvas.next_page();
    }
    canvas.finish();
    return pages.count();
}

} // namespace luft::sheet
