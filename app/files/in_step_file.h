// Two performances heard together, as a file: one on the left, the other on the right.
#pragma once

#include "base/progress.h"
#include "files/compared.h"
#include "media/media.h"

#include <filesystem>
#include <memory>

namespace luft::files {

struct InStepOptions {
    double speed = 1;        ///< of the first one's, 0.25 to 1
    bool transposed = false; ///< the second one in the first one's key
};

/// The two recordings as one sound at the first one's time (together/in_step.h), both equally loud as far as
/// the project knows. Throws as Project::media and media::open_playable_sound.
std::unique_ptr<media::PlayableSound>
open_in_step(const project::Project& project, const project::Performance& a, const project::Performance& b,
             const compare::Alignment& alignment, bool transposed, const Progress& progress = {});

/// Writes it: WAV, FLAC or M4A by the file's ending, 24 bits where nothing is lost; how long it is. Throws as
/// open_in_step and media::write_movie, and Stopped; then nothing is left behind.
Seconds write_in_step(const project::Project& project, const compare::Comparison& compared,
                      const std::filesystem::path& file, const InStepOptions& options,
                      const Progress& progress);

} // namespace luft::files
