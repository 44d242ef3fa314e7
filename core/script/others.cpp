#include "script/others.h"

#include "script/title.h"

#include <algorithm>

namespace luft::script {

const Other* other_of(const Source& source, project::PerformanceId id) {
    const auto at =
        std::ranges::find_if(source.others, [&](const Other& o) { return o.performance.id == id; });
    return at == source.others.end() ? nullptr : &*at;
}

const project::Performance& performance_of(const Source& source, const Segment& segment) {
    const Other* other = segment.other ? other_of(source, *segment.other) : nullptr;
    return other ? other->performance : source.performance;
}

std::string performance_name(const project::Performance& performance) {
    const std::string label = one_line(performance.label), performer = one_line(performance.performer);
    return performer.empty() ? label : label + " (" + performer + ")";
}

Share share_of(const CueSheet& sheet, std::optional<project::PerformanceId> other) {
    if (!other) return {seconds(sheet.quoted_once), sheet.quoted_share};
    const auto at = std::ranges::find(sheet.others, *other, &QuotedOther::performance);
    return at == sheet.others.end() ? Share{} : Share{seconds(at->quoted_once), at->quoted_share};
}

} // namespace luft::script
