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
            .sung_words = project.sung_words(performance.id)};
}

} // namespace luft::profile
