#include "export/sheet_pictures.h"

#include "base/error.h"
#include "sheet/draw.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace luft::exports {
namespace {

constexpr double kWidth = 960; ///< units; at two pixels each as wide as a full-HD frame
constexpr double kPixels = 2;
constexpr double kLeastScale = 28; ///< units a second: half a minute on one row, longer than anyone's breath

std::string name_of(std::size_t number) {
    std::array<char, 32> name{};
    std::snprintf(name.data(), name.size(), "row-%02zu.png", number);
    return name.data();
}

/// The sheet at a scale at which no phrase is cut in two, down to kLeastScale.
sheet::Layout laid_out(const profile::Source& source, const sheet::Canvas& measuring) {
    const auto measure = [&](double width, std::string_view words, sheet::Type type, int most) {
        return measuring.paragraph_height(width, words, type, most);
    };
    sheet::View view{.width = kWidth, .per_second = sheet::fitting_scale(source, kWidth, 0), .margin = 0};
    for (;; view.per_second = std::max(view.per_second * 0.9, kLeastScale)) {
        sheet::Layout layout(source, view, measure);
        if (view.per_second <= kLeastScale || std::ranges::none_of(layout.rows(), &sheet::Row::goes_on))
            return layout;
    }
}

} // namespace

std::vector<std::filesystem::path>
sheet_pictures(const profile::Source& source, const std::filesystem::path& folder, const Progress& progress) {
    std::error_code fault;
    std::filesystem::create_directories(folder, fault);
    if (fault)
        throw Error(Fault::cannot_write, "'" + folder.string() + "' can't be made: " + fault.message() + ".");
    const sheet::Canvas measuring = sheet::Canvas::picture(1, 1);
    const sheet::Layout layout = laid_out(source, measuring);
    const sheet::Look look;
    std::vector<std::filesystem::path> files;
    const std::size_t rows = layout.rows().size();
    for (std::size_t row = 0; row < rows; ++row) {
        progress.step(static_cast<double>(row) / static_cast<double>(rows), "drawing");
        if (layout.rows()[row].kind != sheet::Row::Kind::sung) continue;
        const int height = static_cast<int>(std::ceil(layout.places()[row].height));
        sheet::Canvas canvas = sheet::Canvas::picture(static_cast<int>(kWidth), height, kPixels);
        canvas.clear(look.colours.paper);
        sheet::draw_row(canvas, layout, row, look);
        files.push_back(folder / name_of(files.size() + 1));
        canvas.write_png(files.back());
    }
    return files;
}

} // namespace luft::exports
