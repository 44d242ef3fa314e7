// The vocal tract: a row of resonators.
#pragma once

#include "base/units.h"

#include <array>
#include <complex>
#include <vector>

namespace luft::singer {

/// One formant.
struct Formant {
    Hertz frequency;
    Hertz bandwidth;
};
/// F1 to F5.
using Formants = std::array<Formant, 5>;

/// Second-order resonator with gain 1 at 0 Hz (Klatt 1980, JASA 67, 971): y = A x + B y1 + C y2 with
/// C = -exp(-2 pi bw T), B = 2 exp(-pi bw T) cos(2 pi F T), A = 1 - B - C.
struct Resonator {
    double a = 1, b = 0, c = 0;
    double y1 = 0, y2 = 0;

    void tune(Formant f, SampleRate rate);
    double run(double x) {
        const double y = a * x + b * y1 + c * y2;
        y2 = y1;
        y1 = y;
        return y;
    }
    /// Transfer function at a frequency.
    [[nodiscard]] std::complex<double> response(Hertz f, SampleRate rate) const;
};

/// Resonators in cascade: the five given formants, and five more above F5 about 1 kHz apart, as a tube has
/// them (Klatt's higher-pole correction by real poles). Those above 0.45 of the sample rate are left out.
class Tract {
  public:
    explicit Tract(SampleRate rate) : rate_(rate) {}

    void shape(const Formants& formants);
    double run(double x) {
        for (auto& r : row_)
            x = r.run(x);
        return x;
    }
    [[nodiscard]] double gain(Hertz f) const; ///< magnitude of the response

  private:
    SampleRate rate_;
    std::vector<Resonator> row_;
};

} // namespace luft::singer
