#include "profile/gather.h"

namespace luft::profile {

Source gather(const project::Project& project, const project::Performance& performance) {
    return {.piece = project.piece(),
            .performance = performance,
            .listening = project.listening(performance.id),
            .curves = project.curves(performance.id),
            .marks = project.marks(performance.id),
            .moments = project.moments(performance.id),
            .vocabulary = project.vocabulary(),
            .sung_words = project.sung_words(performance.id),
            .stops = stops_of(project, performance.id)};
}

std::vector<Seconds> stops_of(const project::Project& project, project::PerformanceId performance) {
    std::vector<Seconds> stops;
    for (const auto& item : project.script(performance))
        if (item.kind == project::ScriptItemKind::stop) stops.push_back(item.at);
    return stops;
}

} // namespace luft::profile
