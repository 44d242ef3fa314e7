// Vocal tract and glottal pulse, fitted together to the partials of one frame.
#pragma once

#include "base/units.h"
#include "voice/partials.h"

#include <array>
#include <optional>
#include <vector>

namespace luft::voice {

/// What a frame's partials say about the tract and the pulse. Spreads tell how far they leave it open.
struct SourceFit {
    Hertz f1, f2;
    double f1_spread = 0, f2_spread = 0; ///< standard deviation, in octaves
    double pulse = 1;        ///< Rd: 0.5 pressed, 1 modal, 2.7 breathy or head register (Fant 1995)
    double pulse_spread = 0; ///< standard deviation
};

/// Analysis by synthesis (as Vincent, Rosec & Chonavel 2005 fit source and filter at once): the levels of the
/// partials up to 2.6 kHz are held against every pair of a tract and a pulse. Tracts are cascades of
/// resonances (Klatt 1980) with F1 on a scale of 230 to 950 Hz, F2 of 560 to 2700 Hz, and three sets of upper
/// formants; pulses are LF pulses of ten shapes (pulse_shape.h). Each pair weighs exp(-e/2), e being the sum
/// of squared differences in units of what a model can be off (2 dB below 1.8 kHz, 4 to 2.3 kHz, 15 above:
/// upper formants aren't modelled one by one); what is given are weighted means. So the pulse is judged over
/// all vowels that could have made the partials, and the vowel over all pulses.
/// Tuned on the project's singer, song seeds 1002, 1003, 1005, five voice types.
class SourceFitter {
  public:
    /// `depth`: partials further under the strongest than that are taken for noise. `doubt` multiplies what
    /// the model can be off; over 1 where other sounds mix in.
    SourceFitter(Decibels depth, double doubt);

    /// None with fewer than three partials to go by.
    [[nodiscard]] std::optional<SourceFit> fit(const Partials& partials);

    /// Whether the partials leave little open about tract and pulse.
    static bool is_certain(const SourceFit& fit);

    /// Remembers the vowel of a certain fit. High notes, whose few partials fit an open vowel with a round
    /// pulse as well as a closed vowel with a sharp one, can then be fitted a second time among the vowels
    /// that the singer is known to sing.
    void remember(const SourceFit& fit);

    /// From now on a tract far from every remembered vowel counts 250 times less than one amid them. Does
    /// nothing when fewer than 50 are remembered.
    void expect_remembered();

  private:
    static constexpr std::size_t kPulses = 10;
    struct Place; ///< one partial, as it enters the sums

    double depth_, doubt_;
    std::vector<double> f1_, f2_; ///< log2 by tract
    std::vector<float> gains_;    ///< dB, by grid point of frequency, then by tract
    std::array<std::vector<float>, kPulses> levels_;
    // Sums over the partials of weight x difference, x its square, and x the pulse's levels; by tract.
    std::vector<float> first_, second_;
    std::vector<float> difference_; ///< of one partial, by tract
    std::array<std::vector<float>, kPulses> cross_;
    std::vector<float> error_;                  ///< by pulse, then by tract
    std::vector<float> surprise_;               ///< in the same units as errors, by tract
    std::vector<std::array<double, 2>> vowels_; ///< log2 of F1 and F2
};

/// Fits by frame, NaN where there is none; working data of the ear, not kept in a project. F1 and F2 also
/// stand where they are too uncertain for the formant curves.
struct SourceCurves {
    std::vector<float> pulse, pulse_spread, f1, f2;
};

} // namespace luft::voice
