#include "export/phrase_rows.h"

#include "sheet/word_places.h"

#include <algorithm>
#include <utility>

namespace luft::exports {
namespace {

/// Units a second on 960 units: half a minute on one row, longer than anyone's breath.
constexpr double kLeastScale = 28, kLeastFor = 960;

} // namespace

sheet::Layout phrase_rows(const profile::Source& source, double width,
                          std::function<bool(const project::Moment&)> wanted) {
    const sheet::Canvas measuring = sheet::Canvas::picture(1, 1);
    const auto measure = [&](double wide, std::string_view words, sheet::Type type, int most) {
        return measuring.paragraph_height(wide, words, type, most);
    };
    sheet::WordWidths widths(measuring);
    const auto word_width = [&](std::string_view word) { return widths.of(word); };
    const double least = kLeastScale * width / kLeastFor;
    sheet::View view{.width = width,
                     .per_second = sheet::fitting_scale(source, width, 0),
                     .margin = 0,
                     .wanted = std::move(wanted)};
    for (;; view.per_second = std::max(view.per_second * 0.9, least)) {
        sheet::Layout layout(source, view, measure, word_width);
        if (view.per_second <= least || std::ranges::none_of(layout.rows(), &sheet::Row::goes_on))
            return layout;
    }
}

} // namespace luft::exports
