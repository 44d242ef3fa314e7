#include "desk/work/keep_times.h"

#include <algorithm>
#include <utility>

namespace luft::desk {

Rehearsal::Measured still_spoken(const Session& session, const Rehearsal& rehearsal) {
    Rehearsal::Measured out;
    if (!session.shown()) return out;
    const auto items = session.project().script(*session.shown());
    for (const auto& segment : rehearsal.sheet().segments) {
        if (segment.kind != script::SegmentKind::talk || !segment.item) continue;
        const auto found = rehearsal.measured().find(*segment.item);
        const bool same = std::ranges::any_of(
            items, [&](const auto& i) { return i.id == *segment.item && i.text == segment.text; });
        if (found != rehearsal.measured().end() && same) out.insert(*found);
    }
    return out;
}

std::size_t store_measured(Session& session, const Rehearsal::Measured& measured) {
    std::vector<std::pair<project::ScriptItemId, std::optional<Seconds>>> times;
    if (!session.shown()) return 0;
    for (const auto& item : session.project().script(*session.shown()))
        if (const auto found = measured.find(item.id); found != measured.end())
            times.emplace_back(item.id, found->second);
    if (!times.empty()) session.edit([&](project::Project& project) { project.set_rehearsed(times); });
    return times.size();
}

} // namespace luft::desk
