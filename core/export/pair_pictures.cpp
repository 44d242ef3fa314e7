#include "export/pair_pictures.h"

#include "compare/telling.h"
#include "export/compare_words.h"
#include "export/plain_text.h"

#include <set>

namespace luft::exports {
namespace {

sheet::PairLayout laid_out(const compare::Comparison& c, const profile::Source& a, const profile::Source& b,
                           double width) {
    const sheet::PairSource source{a, b, c.alignment, c.counterparts, c.differences};
    const sheet::Canvas measuring = sheet::Canvas::picture(1, 1);
    sheet::PairView view;
    view.width = width;
    view.per_second = sheet::pair_fitting_scale(source, width);
    return {source, view, sheet::letters_of(measuring)};
}

} // namespace

PairPictures::PairPictures(const compare::Comparison& comparison, const profile::Source& a,
                           const profile::Source& b, double width)
    : comparison_(comparison), layout_(laid_out(comparison, a, b, width)) {}

std::vector<std::size_t> PairPictures::telling() const {
    std::set<std::size_t> rows;
    for (const auto& telling : compare::most_telling(comparison_.differences))
        if (const auto row = layout_.row_of(comparison_.differences.at(telling.difference)))
            rows.insert(*row);
    return {rows.begin(), rows.end()};
}

std::optional<int> PairPictures::number_of(std::size_t difference) const {
    for (const auto& sign : layout_.signs())
        if (sign.difference == difference) return sign.number;
    return std::nullopt;
}

std::string PairPictures::words(std::size_t row) const {
    const auto part = [](const project::Performance& performance, const sheet::PairPart& sung) {
        return one_line(performance.label) + " " + (sung.lacking ? "nothing" : span_words(sung.sung));
    };
    const auto& what = layout_.rows()[row];
    std::string out = part(comparison_.a, what.a) + ", " + part(comparison_.b, what.b), marked;
    for (const auto& sign : layout_.signs())
        if (sign.row == row) marked += (marked.empty() ? "" : ", ") + std::to_string(sign.number);
    return marked.empty() ? out : out + "; marked: " + marked;
}

void PairPictures::draw(sheet::Canvas& canvas, std::size_t row, std::optional<sheet::Colour> paper) const {
    if (paper) canvas.clear(*paper);
    sheet::draw_pair_row(canvas, layout_, row, {});
}

std::string pair_pictures_words(const compare::Comparison& c) {
    return one_line(c.b.label) + " is drawn in the key and on the time of " + one_line(c.a.label) +
           ". Height is pitch, thickness is level; solid blue is sung in chest register, striped orange in "
           "head, "
           "grey where that can't be told. A box: only one sings it. The numbers are those of the table.";
}

} // namespace luft::exports
