#include "export/cue_rows.h"

#include <algorithm>

namespace luft::exports {

std::vector<CueRow> cue_rows(const script::CueSheet& sheet) {
    std::vector<CueRow> rows;
    for (const auto& s : sheet.segments)
        rows.push_back({&s, nullptr});
    for (const auto& a : sheet.asides)
        rows.push_back({nullptr, &a});
    std::ranges::stable_sort(rows, {}, &CueRow::start);
    return rows;
}

std::string_view kind_word(const CueRow& row) {
    if (row.aside) return "aside";
    switch (row.segment->kind) {
    case script::SegmentKind::talk:
        return "talk";
    case script::SegmentKind::quote:
        return "quote";
    case script::SegmentKind::replay:
        return "replay";
    case script::SegmentKind::play:
        break;
    }
    return "play";
}

} // namespace luft::exports
