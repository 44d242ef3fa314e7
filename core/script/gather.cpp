#include "script/gather.h"

#include <algorithm>

namespace luft::script {
namespace {

bool names(const Source& source, project::PerformanceId other) {
    const auto of_it = [&](const std::optional<project::Quote>& quote) {
        return quote && quote->performance == other;
    };
    return std::ranges::any_of(source.moments, of_it, &project::Moment::beside) ||
           std::ranges::any_of(source.items, of_it, &project::ScriptItem::quote);
}

} // namespace

Source gather(const project::Project& project, const project::Performance& performance) {
    Source source{.piece = project.piece(),
                  .performance = performance,
                  .marks = project.marks(performance.id),
                  .moments = project.moments(performance.id),
                  .items = project.script(performance.id),
                  .settings = project.script_settings(),
                  .vocabulary = project.vocabulary(),
                  .sung_words = project.sung_words(performance.id)};
    for (const project::Performance& other : project.performances())
        if (other.id != performance.id)
            source.others.push_back(
                {other, names(source, other.id) ? project.marks(other.id) : std::vector<project::Mark>()});
    return source;
}

} // namespace luft::script
