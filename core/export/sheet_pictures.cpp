#include "export/sheet_pictures.h"

#include "base/write_file.h"
#include "export/numbered_files.h"
#include "export/phrase_rows.h"
#include "sheet/draw.h"

#include <cmath>

namespace luft::exports {
namespace {

constexpr double kWidth = 960; ///< units; at two pixels each as wide as a full-HD frame
constexpr double kPixels = 2;
constexpr std::string_view kKind = "row", kPng = ".png", kSvg = ".svg";

} // namespace

std::vector<std::filesystem::path>
sheet_pictures(const profile::Source& source, const std::filesystem::path& folder, const Progress& progress) {
    make_folder(folder);
    const sheet::Layout layout = phrase_rows(source, kWidth);
    const sheet::Look look;
    std::vector<std::filesystem::path> files;
    const std::size_t rows = layout.rows().size();
    std::size_t number = 0;
    for (std::size_t row = 0; row < rows; ++row) {
        progress.step(static_cast<double>(row) / static_cast<double>(rows), "drawing");
        if (layout.rows()[row].kind != sheet::Row::Kind::sung) continue;
        ++number;
        const double height = std::ceil(layout.places()[row].height);
        const auto draw = [&](sheet::Canvas& canvas) {
            canvas.clear(look.colours.paper);
            sheet::draw_row(canvas, layout, row, look);
        };
        sheet::Canvas pixels =
            sheet::Canvas::picture(static_cast<int>(kWidth), static_cast<int>(height), kPixels);
        draw(pixels);
        files.push_back(folder / numbered(kKind, number, kPng));
        pixels.write_png(files.back());
        sheet::Canvas outlines = sheet::Canvas::svg(kWidth, height);
        draw(outlines);
        files.push_back(folder / numbered(kKind, number, kSvg));
        write_file(files.back(), outlines.take_svg());
    }
    for (const auto ending : {kPng, kSvg})
        remove_numbered_after(folder, kKind, number, ending);
    return files;
}

} // namespace luft::exports
