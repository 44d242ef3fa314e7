#include "sheet/layout.h"

#include "profile/statistics.h"
#include "sheet/measures.h"
#include "sheet/word_places.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace luft::sheet {
namespace {

constexpr Seconds kSliver{0.35};

Seconds room(const View& view) {
    const double origin = kGutter + kLead.value() * view.per_second;
    return Seconds((view.width - view.margin - origin - kRightPad) / view.per_second);
}

double card_height(const CardWords& words, double width, const Layout::Measure& measure) {
    const double inner = width - kCardIndent - kCardPad;
    double height = 2 * kCardPad + measure(inner, words.title, kCardTitle, kTitleLines);
    if (!words.remark.empty())
        height += measure(inner, words.remark, words.own_remark ? kCardRemark : kCardEvidence,
                          words.own_remark ? kRemarkLines : kEvidenceLines);
    if (!words.drill.empty()) height += measure(inner, words.drill, kCardDrill, 1);
    return std::ceil(std::max(height, kLeastCard));
}

template <class Placed>
std::span<const Placed> on_row(const std::vector<Placed>& all, std::size_t row) {
    const auto found = std::ranges::equal_range(all, row, {}, &Placed::row);
    return {found.begin(), found.end()};
}

} // namespace

std::span<const Bracket> Layout::brackets_on(std::size_t row) const {
    return on_row(brackets_, row);
}

std::span<const Card> Layout::cards_on(std::size_t row) const {
    return on_row(cards_, row);
}

std::span<const PlacedWord> Layout::words_on(std::size_t row) const {
    return on_row(words_, row);
}

CardWords card_words(const project::Moment& moment, const vocabulary::Vocabulary& vocabulary) {
    CardWords words;
    for (const auto& tag : moment.shades) {
        const auto* facet = vocabulary.facet(tag.facet);
        const auto* shade = vocabulary.shade(tag);
        if (!words.title.empty()) words.title += "; ";
        words.title += (facet ? facet->name : tag.facet) + ": " + (shade ? shade->name : tag.shade);
    }
    if (words.title.empty()) words.title = "Not yet tagged";
    words.own_remark = !moment.remark.empty();
    words.remark = words.own_remark ? moment.remark : moment.evidence;
    if (const auto* drill = vocabulary.drill(moment.drill)) words.drill = "Drill: " + drill->title;
    return words;
}

Layout::Layout(const profile::Source& source, const View& view, const Measure& measure,
               const WordWidth& width)
    : source_(&source), view_(view), levels_(level_range(source)),
      rows_(sheet::rows(source, std::max(room(view), Seconds(1)))), places_(rows_.size()) {
    place_brackets();
    place_rows(measure);
    const WordPlacer placer(source.sung_words, width);
    for (std::size_t row = 0; row < rows_.size(); ++row)
        std::ranges::move(placer.place(line(row), row), std::back_inserter(words_));
}

double Layout::origin() const {
    return kGutter + kLead.value() * view_.per_second;
}

double Layout::height() const {
    return places_.empty() ? 0 : places_.back().top + places_.back().height;
}

double Layout::rest_width(std::size_t row) const {
    const double most = std::max(80.0, right_edge() - origin() - kRightPad);
    return std::min(most, 60 + 9 * rows_[row].shown.length().value());
}

double Layout::x_of(std::size_t row, Seconds time) const {
    const Row& r = rows_[row];
    if (r.kind == Row::Kind::rest) {
        const double share = r.shown.length() > Seconds(0) ? (time - r.shown.start) / r.shown.length() : 0;
        return origin() + std::clamp(share, 0.0, 1.0) * rest_width(row);
    }
    return origin() + (time - r.sung.start).value() * view_.per_second;
}

Seconds Layout::time_at(std::size_t row, double x) const {
    const Row& r = rows_[row];
    if (r.kind == Row::Kind::rest)
        return r.shown.start + r.shown.length() * std::clamp((x - origin()) / rest_width(row), 0.0, 1.0);
    return std::clamp(r.sung.start + Seconds((x - origin()) / view_.per_second), r.shown.start, r.shown.end);
}

Staff Layout::staff(std::size_t row) const {
    const PlacedRow& place = places_[row];
    return {place.staff_top, place.staff_bottom, kGutter, right_edge() - kRightPad / 2,
            place.high,      view_.semitone};
}

SungLine Layout::line(std::size_t row) const {
    const Row& r = rows_[row];
    return {.source = source_,
            .sung = r.sung,
            .notes = &r.notes,
            .words = &r.words,
            .low = r.low,
            .high = r.high,
            .levels = levels_,
            .per_second = view_.per_second,
            .edge = right_edge(),
            .staff = staff(row),
            .x_of = [this, row](Seconds t) { return x_of(row, t); }};
}

std::size_t Layout::row_under(double y) const {
    const auto after = std::ranges::upper_bound(places_, y, {}, [](const PlacedRow& p) { return p.top; });
    return after == places_.begin() ? 0 : static_cast<std::size_t>(after - places_.begin()) - 1;
}

void Layout::place_brackets() {
    if (rows_.empty()) return;
    std::vector<std::size_t> order(source_->moments.size());
    for (std::size_t i = 0; i < order.size(); ++i)
        order[i] = i;
    std::ranges::stable_sort(order, {}, [&](std::size_t i) { return source_->moments[i].span.start; });
    int number = 0;
    std::vector<std::array<double, kMostLanes>> reached(rows_.size());
    for (auto& row : reached)
        row.fill(-1);
    for (const std::size_t i : order) {
        const Span span = source_->moments[i].span;
        ++number;
        if (view_.wanted && !view_.wanted(source_->moments[i])) continue;
        const std::size_t first = row_of(span.start);
        cards_.push_back({.moment = i, .number = number, .row = first});
        for (std::size_t row = first; row < rows_.size() && rows_[row].shown.start < span.end; ++row) {
            // What barely reaches onto another row is left to the one where it belongs.
            if (row > first && span.end - rows_[row].shown.start < kSliver) break;
            Bracket b{.moment = i, .number = number, .row = row};
            b.begins = row == first;
            b.ends = span.end <= rows_[row].shown.end + kSliver;
            b.left = x_of(row, std::max(span.start, rows_[row].shown.start));
            b.right = std::max(b.left + kLeastBracket, x_of(row, std::min(span.end, rows_[row].shown.end)));
            int lane = 0;
            while (lane + 1 < kMostLanes && reached[row][static_cast<std::size_t>(lane)] > b.left - 4)
                ++lane;
            b.lane = lane;
            reached[row][static_cast<std::size_t>(lane)] = b.right;
            brackets_.push_back(b);
        }
    }
    std::ranges::stable_sort(brackets_, {},
                             &Bracket::row); // a long one reaches past the next one's first row
}

void Layout::place_rows(const Measure& measure) {
    std::vector<int> lanes(rows_.size(), 0);
    for (const auto& b : brackets_)
        lanes[b.row] = std::max(lanes[b.row], b.lane + 1);
    std::size_t card = 0;
    double y = kSheetTop;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        const Row& row = rows_[i];
        PlacedRow& place = places_[i];
        place.top = y;
        if (row.kind == Row::Kind::rest) {
            place.staff_top = lanes[i] * kLane + 4;
            place.staff_bottom = place.staff_top + kRestHeight;
            place.height = place.staff_bottom + 8;
        } else {
            const double semitones = std::max(kLeastSemitones, row.high - row.low + 3);
            place.high = (row.low + row.high + semitones) / 2;
            place.staff_top = kAbove + lanes[i] * kLane;
            place.staff_bottom = place.staff_top + semitones * view_.semitone;
            place.height = place.staff_bottom + kBelow;
        }
        if (!row.words.empty()) {
            place.words = place.staff_bottom + kWordsBelow;
            place.height += kWordsLine;
        }
        double bottom = 4;
        for (; view_.margin > 0 && card < cards_.size() && cards_[card].row == i; ++card) {
            Card& c = cards_[card];
            c.left = right_edge() + kMarginGap;
            c.width = view_.margin - kMarginGap - kMarginPad;
            c.top = bottom;
            c.height =
                card_height(card_words(source_->moments[c.moment], source_->vocabulary), c.width, measure);
            bottom += c.height + kCardGap;
        }
        place.height = std::ceil(std::max(place.height, bottom + 4));
        y += place.height;
    }
    if (view_.margin <= 0) cards_.clear();
}

double fitting_scale(const profile::Source& source, double width, double margin) {
    std::vector<double> lengths;
    for (const auto& row : rows(source, Seconds(std::numeric_limits<double>::max() / 4)))
        if (row.kind == Row::Kind::sung) lengths.push_back(row.sung.length().value());
    return scale_for(lengths, width - margin - kGutter - kRightPad);
}

double scale_for(const std::vector<double>& lengths, double room) {
    double longest = profile::percentile(lengths, 0.9).value_or(6);
    // A few longer ones may be cut, but not for the sake of a little more width.
    if (!lengths.empty()) longest = std::max(longest, std::min(std::ranges::max(lengths), 1.3 * longest));
    longest += kLead.value() + 0.2;
    return std::clamp(room / longest, 40.0, 160.0);
}

} // namespace luft::sheet
