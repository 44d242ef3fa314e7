#include "singer/lf.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

using namespace luft::singer;

// Fant 1995, STL-QPSR 2-3, 119-156: the regressions, worked out by hand for six values of Rd.
TEST_CASE("The pulse's shape follows Fant's regressions on Rd") {
    struct Row {
        double rd, ra, rk, rg, tp, te, fa;
    };
    const Row rows[] = {
        {0.3, 0.0044, 0.2594, 1.7877, 0.2797, 0.3522, 3979},
        {0.5, 0.0140, 0.2830, 1.3736, 0.3640, 0.4670, 1251},
        {1.0, 0.0380, 0.3420, 1.0323, 0.4844, 0.6500, 461},
        {1.5, 0.0620, 0.4010, 0.9443, 0.5295, 0.7418, 282},
        {2.0, 0.0860, 0.4600, 0.9340, 0.5353, 0.7816, 204},
        {2.7, 0.1196, 0.5426, 0.9801, 0.5102, 0.7870, 146},
    };
    for (const Row& r : rows) {
        CAPTURE(r.rd);
        const LfPulse p = lf_pulse(r.rd);
        CHECK(p.ra == Approx(r.ra).margin(5e-5));
        CHECK(p.rk == Approx(r.rk).margin(5e-5));
        CHECK(p.rg == Approx(r.rg).margin(5e-5));
        CHECK(p.tp == Approx(r.tp).margin(5e-5));
        CHECK(p.te == Approx(r.te).margin(5e-5));
        CHECK(110 / (2 * M_PI * p.ta) == Approx(r.fa).margin(0.5));
        // Rd = (1/0.11)(0.5 + 1.2 Rk)(Rk/(4 Rg) + Ra) leads back to where it came from.
        CHECK((0.5 + 1.2 * p.rk) * (p.rk / (4 * p.rg) + p.ra) / 0.11 == Approx(r.rd).epsilon(1e-9));
    }
}

// Fant, Liljencrants, Lin 1985: what defines the model.
TEST_CASE("The flow closes fully, and is steepest, with -1, at te") {
    for (const double rd : {0.3, 0.7, 1.0, 1.6, 2.7}) {
        CAPTURE(rd);
        const LfPulse p = lf_pulse(rd);
        constexpr int kSteps = 200000;
        double area = 0, size = 0, lowest = 0;
        for (int i = 0; i < kSteps; ++i) {
            const double e = p.at((i + 0.5) / kSteps);
            area += e / kSteps, size += std::abs(e) / kSteps, lowest = std::min(lowest, e);
        }
        CHECK(std::abs(area) < 1e-4 * size);
        CHECK(lowest == Approx(-1).margin(5e-3)); // breathy pulses turn just before te
        CHECK(p.at(p.te - 1e-9) == Approx(-1).margin(1e-5));
        CHECK(p.at(p.te + 1e-9) == Approx(-1).margin(1e-5));
        CHECK(p.at(p.tp) == Approx(0).margin(1e-9)); // the flow's peak
        CHECK(p.at(1 - 1e-12) == Approx(0).margin(1e-9));
    }
}

TEST_CASE("A breathier pulse has a stronger fundamental and weaker upper partials") {
    double last_h1h2 = -100, last_fall = -100;
    for (const double rd : {0.3, 0.6, 1.0, 1.5, 2.1, 2.7}) {
        const auto h = lf_harmonics(lf_pulse(rd), 20);
        const double h1h2 = 20 * std::log10(h[0] / h[1]), fall = 20 * std::log10(h[0] / h[19]);
        CHECK(h1h2 > last_h1h2);
        CHECK(fall > last_fall);
        last_h1h2 = h1h2, last_fall = fall;
    }
}
