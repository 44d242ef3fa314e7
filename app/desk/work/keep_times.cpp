#include "desk/work/keep_times.h"

#include <utility>

namespace luft::desk {

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
