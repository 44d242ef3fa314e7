// How loud each note comes out: envelopes, and the factors that give every vowel the level asked for.
#pragma once

#include "singer/layout.h"
#include "singer/lf.h"

#include <map>
#include <vector>

namespace luft::singer {

/// A smooth step from 0 at `from` to 1 at `from + length` (raised cosine).
double step_up(double t, double from, double length);

/// Envelope of onset and offset at time t, 0 to 1; 1 where joined.
double voicing_of(const PlacedNote& n, double t);

/// Level against the note's own, dB, along its path.
double path_db(const PlacedNote& n, double t);

/// Register of the note at time t: 0 chest, 1 head, between while a flip passes (60 ms).
double head_of(const PlacedNote& n, double t);

/// Factors in dB that bring source and tract to an output RMS of 1 (0 dB).
struct Gains {
    double chest_db = 0, head_db = 0, noise_db = 0, murmur_db = 0;
};

Formants formants_of(const SungNote& note, const Singer& singer);

/// Computes gains from the pulse's harmonics and the tract's response at the note's own pitch.
class GainBook {
  public:
    explicit GainBook(SampleRate rate) : rate_(rate) {}
    Gains gains(const SungNote& note, const Singer& singer);

  private:
    double voice_db(const Formants& formants, Hertz f0, double rd);
    double noise_db(const Formants& formants) const;

    SampleRate rate_;
    std::map<int, std::vector<double>> harmonics_; // by Rd in hundredths
};

/// The note that a time near a join shares with the note at `i`, and how much of it (0 to 0.5).
struct Neighbour {
    std::size_t index = 0;
    double share = 0;
};
Neighbour neighbour(const std::vector<PlacedNote>& notes, std::size_t i, double t, double width);

} // namespace luft::singer
