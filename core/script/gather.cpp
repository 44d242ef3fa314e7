#include "script/gather.h"

namespace luft::script {

Source gather(const project::Project& project, const project::Performance& performance) {
    return {.piece = project.piece(),
            .performance = performance,
            .marks = project.marks(performance.id),
            .moments = project.moments(performance.id),
            .items = project.script(performance.id),
            .settings = project.script_settings(),
            .vocabulary = project.vocabulary(),
            .sung_words = project.sung_words(performance.id)};
}

} // namespace luft::script
