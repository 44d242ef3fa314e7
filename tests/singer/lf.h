// The Liljencrants-Fant model of one glottal cycle, steered by the single shape parameter Rd.
#pragma once

#include <vector>

namespace luft::singer {

/// Shape of the flow derivative over one cycle of length 1, with its steepest closing = -1.
///
/// Fant, Liljencrants, Lin 1985 (STL-QPSR 4, "A four-parameter model of glottal flow"): from 0 to te
/// e(t) = E0 exp(alpha t) sin(pi t / tp); from te to 1 the return phase
/// e(t) = -(exp(-eps (t - te)) - exp(-eps (1 - te))) / (eps ta); eps from eps ta = 1 - exp(-eps (1 - te)),
/// alpha from the rule that the flow ends where it began (the area under e is 0). Fant 1995 (STL-QPSR 2-3,
/// "The LF model revisited"): Ra, Rk and Rg from Rd.
struct LfPulse {
    double ra = 0, rk = 0, rg = 0;
    double tp = 0; ///< peak of the flow
    double te = 0; ///< steepest closing
    double ta = 0; ///< return phase: time constant
    double alpha = 0, eps = 0, e0 = 0;

    /// The flow derivative at `phase`, 0 to 1.
    [[nodiscard]] double at(double phase) const;
};

/// The pulse for Rd: 0.3 pressed, 1 modal, 2.7 breathy; clamped to the 0.3 to 2.7 that Fant's regressions
/// cover.
LfPulse lf_pulse(double rd);

/// Amplitudes of the first `count` harmonics of the pulse train, by direct Fourier sum.
std::vector<double> lf_harmonics(const LfPulse& pulse, int count);

} // namespace luft::singer
