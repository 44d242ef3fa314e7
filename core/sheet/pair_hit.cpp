#include "sheet/pair_hit.h"

#include "sheet/measures.h"

namespace luft::sheet {

PairHit pair_hit(const PairLayout& layout, double x, double y) {
    if (layout.rows().empty() || y < layout.head_height() || y >= layout.height()) return {};
    const std::size_t row = layout.row_under(y);
    const PlacedPair& place = layout.places()[row];
    const double inside = y - place.top;
    for (const auto& sign : layout.signs())
        if (sign.row == row && inside >= sign.top && inside < sign.top + kSignLane && x >= sign.left - 10 &&
            x <= sign.left + sign.width + 6)
            return SignHit{sign.difference};
    const auto line = [&](Which which) -> PairHit {
        if (layout.rows()[row].part(which).lacking) return {};
        return LineHit{row, which, layout.time_at(row, which, x)};
    };
    if (inside < place.between) return line(Which::a);
    if (inside >= place.b.top - kAbove) return line(Which::b);
    return {};
}

} // namespace luft::sheet
