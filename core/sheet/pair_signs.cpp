// Differences, ties and added notes between two lines.
#include "sheet/measures.h"
#include "sheet/pair_layout.h"
#include "sheet/pair_words.h"
#include "sheet/rows.h"

#include <algorithm>
#include <cmath>

namespace luft::sheet {

/// Stands them in as many lanes as they need; returns the room of all, row by row.
std::vector<double> PairLayout::place_signs(const Letters& letters) {
    std::vector<std::vector<double>> lanes(rows_.size()); // how far each reaches
    const auto numbers = pair_numbers(source_.differences);
    for (std::size_t i = 0; i < source_.differences.size(); ++i) {
        const auto& difference = source_.differences[i];
        const auto row = row_of(difference);
        if (!row) continue;
        PairSign sign{.difference = i,
                      .number = numbers[i],
                      .row = *row,
                      .words = short_words(difference),
                      .a = difference.a,
                      .b = difference.b};
        sign.width =
            kSignIndent + (letters.width ? letters.width(sign.words, kSignType)
                                         : static_cast<double>(sign.words.size()) * kSignType.size / 2);
        const double at = sign.a ? x_of(*row, Which::a, sign.a->start) : x_of(*row, Which::b, sign.b->start);
        sign.left = std::max(kPairGutter, std::min(at, view_.width - kRightPad - sign.width));
        auto& reached = lanes[*row];
        const auto lane =
            std::ranges::find_if(reached, [&](double end) { return end + kSignSpace <= sign.left; });
        sign.top = static_cast<double>(lane - reached.begin()) * kSignLane; // of `between` so far
        if (lane == reached.end())
            reached.push_back(sign.left + sign.width);
        else
            *lane = sign.left + sign.width;
        signs_.push_back(std::move(sign));
    }
    std::vector<double> room;
    for (const auto& of_row : lanes)
        room.push_back(static_cast<double>(of_row.size()) * kSignLane);
    return room;
}

void PairLayout::tie_notes() {
    const auto notes_a = of_kind(source_.a, project::MarkKind::note),
               notes_b = of_kind(source_.b, project::MarkKind::note);
    const auto start_of = [&](std::size_t row, Which which, const project::Mark& mark) {
        const auto& note = std::get<marks::Note>(mark.what);
        const SungLine there = line(row, which);
        return Point{there.x_of(note.span.start), there.y_of(note.pitch.value() - retuned(*there.source))};
    };
    for (const auto& pair : source_.counterparts.notes) {
        const auto &a = *notes_a.at(pair.a), &b = *notes_b.at(pair.b);
        const auto row = row_of(Which::a, a.span().middle());
        if (!row || row != row_of(Which::b, b.span().middle())) continue;
        const Point from = start_of(*row, Which::a, a), to = start_of(*row, Which::b, b);
        if (std::abs(from.x - to.x) > kSameX || std::abs(pair.apart.value()) > 100 * kSameSemitones)
            ties_.push_back({*row, from, to});
    }
    const auto add = [&](Which which, const auto& notes, const std::vector<std::size_t>& which_ones) {
        for (const std::size_t i : which_ones)
            if (const auto row = row_of(which, notes.at(i)->span().middle()))
                added_.push_back({*row, which, notes.at(i)});
    };
    add(Which::a, notes_a, source_.counterparts.added_by_a);
    add(Which::b, notes_b, source_.counterparts.added_by_b);
}

} // namespace luft::sheet
