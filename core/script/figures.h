// The figures of a cue sheet: how long it talks, how much it quotes, and how long at a stretch.
#pragma once

#include "script/cue_sheet.h"

#include <vector>

namespace luft::script {

/// A stretch of recording during which nobody speaks. It may be made of several pieces, since neither a
/// replay, a quote of another performance nor a halt without words breaks it.
struct Stretch {
    struct Piece {
        std::size_t segment = 0; ///< index into CueSheet::segments
        Rational start, end;     ///< programme time
    };
    std::vector<Piece> pieces;
    Rational length; ///< of the pieces together
};

/// All such stretches in order.
std::vector<Stretch> stretches(const Source& source, const CueSheet& sheet);

/// Fills in talk_time, quoted, quoted_once, quoted_share, longest_quote and others. `recording` is the
/// recording's length on the programme's grid.
void sum_up(const Source& source, Rational recording, CueSheet& sheet);

} // namespace luft::script
