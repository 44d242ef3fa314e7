// The two-state model of register, fitted to one performance.
#pragma once

#include "base/units.h"
#include "marks/passaggio.h"

#include <array>
#include <vector>

namespace luft::marks {

/// What tells the registers apart, for a stretch of singing.
struct RegisterSample {
    double pulse = 0;        ///< shape of the glottal pulse (Rd, see voice/source_fit.h)
    double pulse_spread = 0; ///< how far the partials leave it open
    /// Cepstral peak prominence, and strength of the partials in 2-4 kHz (voice/ring.h), dB: both fall in
    /// head register.
    std::array<double, 2> colour{};
    /// What moves these too: MIDI pitch, F1 and F2 in octaves, level in dB.
    std::array<double, 4> besides{};
};

/// One of the two states: Gaussian in the pulse's shape.
struct RegisterState {
    double share = 0.5;
    double pulse = 1, variance = 0.06;
    std::array<double, 2> colour{}; ///< means, with everything besides at its own
};

struct RegisterModel {
    RegisterState chest, head;
    std::array<std::array<double, 4>, 2> slopes{}; ///< of colour over what is besides
    std::array<double, 4> centre{};
    std::array<double, 2> variance{1, 1}; ///< of colour
    Passaggio passaggio{60};
    double gain = 0;    ///< log likelihood a sample that two states have over one
    bool split = false; ///< the states stand clearly apart

    /// Log odds of head register against chest for this stretch by its sound alone; passaggio.head_odds has
    /// what its pitch says.
    [[nodiscard]] double head_score(const RegisterSample& sample) const;
};

/// Fits by expectation maximisation (Dempster, Laird & Rubin 1977). The pulse's shape leads: its states start
/// from, and are held by four samples at, Rd 1.05 and 2.0 (modal voice has 1, and 2.7 is the roundest of Fant
/// 1995). Uncertain samples count less. Colour comes in second, at less weight, freed of pitch, vowel and
/// level by a regression that both states share, since these move it as much as a register does; and only as
/// far as it is lower in head register. `split` asks that two states explain the samples better than one by
/// 0.09 in log likelihood each, stand 0.4 in Rd and two spreads apart, each with 4 % of the samples, and that
/// the cepstral peak is 1.5 dB lower in head register. Numbers tuned on songs of the project's singer with
/// one and two registers, dry, in rooms and in noise, seeds 1000 to 1023.
RegisterModel fit_registers(const std::vector<RegisterSample>& samples);

} // namespace luft::marks
