// libaubio's pitch trackers, an independent library, on the same scenes.
#pragma once

#include "bench/scene.h"
#include "bench/score.h"
#include "reference/aubio_pitch.h"

#include <memory>
#include <optional>
#include <string>

namespace luft::bench {

/// All its methods that run in real time many times over. Make each before any thread listens: FFTW, which
/// aubio plans with as we do, can't plan in two threads at once.
class AubioTrackers {
  public:
    AubioTrackers();
    /// Scores all of them on a scene's middle signal, for shifts of 0 to 5 frames: their buffers end with the
    /// frame, so their guesses come late. Scenes at another rate than 44.1 kHz are left out.
    Trackers track(const Scene& scene);

  private:
    std::vector<std::unique_ptr<reference::AubioPitch>> trackers_;
};

struct Best {
    std::optional<double> raw_pitch, raw_chroma;
    std::string method; ///< "–" when there is none
};
/// The method and shift with the highest raw pitch accuracy.
Best best_of(const Trackers& trackers);

} // namespace luft::bench
