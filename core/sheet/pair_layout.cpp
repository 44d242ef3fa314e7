#include "sheet/pair_layout.h"

#include "sheet/measures.h"
#include "sheet/pair_words.h"
#include "sheet/rows.h"
#include "sheet/word_places.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace luft::sheet {
namespace {

constexpr Seconds kBeside{0.5};

/// Where nobody sings, as where a line has no notes: the staff's middle.
constexpr std::pair<double, double> kNoNotes{60, 60};

double sung_room(const PairView& view, double origin) {
    return std::max(1.0, (view.width - origin - kRightPad) / view.per_second);
}

std::pair<double, double> pitches(const PairRow& row, double shift_b) {
    std::optional<std::pair<double, double>> both = row.a.range;
    if (row.b.range) {
        const double low = row.b.range->first + shift_b, high = row.b.range->second + shift_b;
        both =
            both ? std::pair(std::min(both->first, low), std::max(both->second, high)) : std::pair(low, high);
    }
    return both.value_or(kNoNotes);
}

} // namespace

PairLayout::PairLayout(const PairSource& source, const PairView& view, const Letters& letters)
    : source_(source), view_(view), levels_a_(level_range(source.a)), levels_b_(level_range(source.b)),
      shift_b_(view.as_sung ? source.alignment.tuning.value() / 100 : -source.alignment.semitones),
      rows_(pair_rows(source, Seconds(sung_room(view, origin())))), places_(rows_.size()),
      head_(pair_head(source, view.as_sung)) {
    head_height_ = kPairHead;
    for (const auto& words : head_)
        head_height_ += letters.paragraph
                            ? letters.paragraph(view.width - 2 * kPairHead, words, kPairHeadType, 0)
                            : kPairHeadType.size * 1.4;
    head_height_ = std::ceil(head_height_ + kPairHead);
    place_rows(place_signs(letters));
    place_words(letters);
    tie_notes();
}

double PairLayout::origin() const {
    return kPairGutter + kLead.value() * view_.per_second;
}

double PairLayout::height() const {
    return places_.empty() ? head_height_ : places_.back().top + places_.back().height;
}

double PairLayout::x_of(std::size_t row, Which which, Seconds own) const {
    const PairRow& r = rows_[row];
    return origin() + (r.to_common(which, own) - r.common.start).value() * view_.per_second;
}

Seconds PairLayout::time_at(std::size_t row, Which which, double x) const {
    const PairRow& r = rows_[row];
    const Seconds common = r.common.start + Seconds((x - origin()) / view_.per_second);
    return r.to_own(which, std::clamp(common, r.common.start - kBeside, r.common.end + kBeside));
}

std::optional<std::size_t> PairLayout::row_of(const compare::Difference& difference) const {
    if (difference.a)
        if (const auto row = row_of(Which::a, difference.a->middle())) return row;
    return difference.b ? row_of(Which::b, difference.b->middle()) : std::nullopt;
}

std::size_t PairLayout::row_under(double y) const {
    const auto after = std::ranges::upper_bound(places_, y, {}, &PlacedPair::top);
    return after == places_.begin() ? 0 : static_cast<std::size_t>(after - places_.begin()) - 1;
}

SungLine PairLayout::line(std::size_t row, Which which) const {
    const PairPart& part = rows_[row].part(which);
    const auto [low, high] = part.range.value_or(kNoNotes);
    return {.source = &source_.of(which),
            .sung = part.sung,
            .notes = &part.notes,
            .words = &part.words,
            .low = low,
            .high = high,
            .levels = which == Which::a ? levels_a_ : levels_b_,
            .per_second = view_.per_second,
            .edge = view_.width,
            .staff = staff(row, which),
            .shift = which == Which::b ? shift_b_ : 0,
            .x_of = [this, row, which](Seconds t) { return x_of(row, which, t); }};
}

void PairLayout::place_rows(const std::vector<double>& signs) {
    double y = head_height_;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        const PairRow& row = rows_[i];
        PlacedPair& place = places_[i];
        place.top = y;
        const auto range = pitches(row, shift_b_);
        const double low = range.first, high = range.second;
        const double semitones = std::max(kLeastSemitones, high - low + 3);
        const auto stand = [&](const PairPart& part, double top) {
            const double height = part.lacking ? kEmptyPart : semitones * view_.semitone;
            return Staff{top,
                         top + height,
                         kPairGutter,
                         view_.width - kRightPad / 2,
                         (low + high + semitones) / 2,
                         view_.semitone};
        };
        place.a = stand(row.a, kAbove);
        double below = place.a.bottom;
        if (!row.a.words.empty()) {
            place.words_a = below + kWordsBelow;
            below += kWordsLine + kWordsBelow - kSungWord.size;
        }
        place.between = below + 6;
        place.b = stand(row.b, place.between + signs[i] + kAbove);
        below = place.b.bottom;
        if (!row.b.words.empty()) {
            place.words_b = below + kWordsBelow;
            below += kWordsLine + kWordsBelow - kSungWord.size;
        }
        place.height = std::ceil(below + kPairGap);
        y += place.height;
    }
    for (PairSign& sign : signs_)
        sign.top += places_[sign.row].between;
}

void PairLayout::place_words(const Letters& letters) {
    for (const Which which : kBoth) {
        const WordPlacer placer(source_.of(which).sung_words, letters.sung_word);
        auto& all = which == Which::a ? words_a_ : words_b_;
        for (std::size_t row = 0; row < rows_.size(); ++row)
            std::ranges::move(placer.place(line(row, which), row), std::back_inserter(all));
    }
}

double pair_fitting_scale(const PairSource& source, double width) {
    std::vector<double> lengths;
    for (const auto& row : pair_rows(source, Seconds(std::numeric_limits<double>::max() / 4)))
        lengths.push_back(row.common.length().value());
    return scale_for(lengths, width - kPairGutter - kRightPad);
}

Letters letters_of(const Canvas& canvas) {
    return {
        [&canvas](double width, std::string_view words, Type type, int most) {
            return canvas.paragraph_height(width, words, type, most);
        },
        [widths = std::make_shared<WordWidths>(canvas)](std::string_view word) { return widths->of(word); },
        [&canvas](std::string_view words, Type type) { return canvas.extent(words, type).width; }};
}

} // namespace luft::sheet
