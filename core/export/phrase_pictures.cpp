#include "export/phrase_pictures.h"

#include "export/phrase_rows.h"

#include <algorithm>
#include <map>

namespace luft::exports {
namespace {

constexpr double kLeastWidth = 6; ///< of a marked place, so that it is seen
constexpr double kOver = 6;       ///< marked above the staff

} // namespace

PhrasePictures::PhrasePictures(const profile::Source& source, double width)
    : layout_(phrase_rows(source, width, [](const project::Moment&) { return false; })) {}

std::vector<PhrasePictures::Phrase> PhrasePictures::of(const std::vector<profile::Example>& places) const {
    std::map<std::size_t, Phrase> found;
    const auto& rows = layout_.rows();
    for (const auto& place : places)
        for (std::size_t row = 0; row < rows.size(); ++row) {
            const Span& shown = rows[row].shown;
            if (rows[row].kind != sheet::Row::Kind::sung) continue;
            if (place.span.start >= shown.end) continue;
            if (place.span.end < shown.start || (place.span.end == shown.start && row > 0)) continue;
            Phrase& phrase = found[row];
            phrase.row = row;
            phrase.sung = rows[row].sung;
            phrase.places.push_back(place.span);
        }
    std::vector<Phrase> phrases;
    for (auto& [row, phrase] : found)
        phrases.push_back(std::move(phrase));
    return phrases;
}

void PhrasePictures::draw(sheet::Canvas& canvas, const Phrase& phrase,
                          std::optional<sheet::Colour> paper) const {
    if (paper) canvas.clear(*paper);
    const sheet::PlacedRow& place = layout_.places()[phrase.row];
    const Span& shown = layout_.rows()[phrase.row].shown;
    const double top = place.staff_top - kOver, height = place.staff_bottom - top;
    for (const Span& span : phrase.places) {
        const double left = layout_.x_of(phrase.row, std::max(span.start, shown.start));
        const double right = layout_.x_of(phrase.row, std::min(span.end, shown.end));
        const double width = std::max(right - left, kLeastWidth);
        canvas.box(left, top, width, height, look_.colours.selected);
        canvas.frame(left, top, width, height, look_.colours.soft, 0.9, 0, sheet::Line::dashed);
    }
    sheet::draw_row(canvas, layout_, phrase.row, look_);
}

} // namespace luft::exports
