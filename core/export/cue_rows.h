// Segments and asides of a cue sheet in one list, as every written form of it goes through them.
#pragma once

#include "script/cue_sheet.h"

#include <string_view>
#include <vector>

namespace luft::exports {

/// Exactly one of the two is set.
struct CueRow {
    const script::Segment* segment = nullptr;
    const script::AsideCue* aside = nullptr;

    [[nodiscard]] Rational start() const {
        return segment ? segment->programme_start : aside->programme_start;
    }
    [[nodiscard]] Rational end() const { return segment ? segment->programme_end : aside->programme_end; }
};

/// In order of programme time; an aside follows the segment that it is spoken over.
std::vector<CueRow> cue_rows(const script::CueSheet& sheet);

/// "talk", "play", "quote", "replay", "aside".
std::string_view kind_word(const CueRow& row);

} // namespace luft::exports
