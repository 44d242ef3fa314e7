#include "voice/second_pass.h"

#include "voice/closure.h"
#include "voice/formants.h"
#include "voice/front.h"
#include "voice/partials.h"
#include "voice/ring.h"
#include "voice/spectrum.h"

namespace luft::voice {
namespace {

void make_room(Curves& c) {
    const std::size_t n = c.frames();
    c.level = Curve<Decibels>(n);
    c.cpp = c.hnr = c.h1h2 = c.ring = c.alpha = Curve<Decibels>(n);
    c.centroid = c.f1 = c.f2 = c.f3 = Curve<Hertz>(n);
}

} // namespace

void second_pass(SampleSource& source, Setting setting, const Texture& texture, Curves& c,
                 const Progress& progress) {
    make_room(c);
    const bool alone = setting == Setting::alone;
    Front front(source);
    Spectrum spectrum;
    CepstralPeak cepstrum;
    FormantFinder formants;
    Partials partials;
    const auto frames = static_cast<double>(std::max<std::size_t>(c.frames(), 1));
    while (const auto frame = front.next()) {
        const auto i = static_cast<std::size_t>(frame->index.value);
        if (i >= c.frames()) break;
        if (frame->index.value % 100 == 0)
            progress.step(static_cast<double>(i) / frames, "measuring the voice");
        if (alone)
            c.level.set(i, texture.level_at(i)); // nothing else sounds: the level is the voice's, rests too
        const auto f0 = c.f0.at(frame->index);
        if (!f0) continue;
        spectrum.measure(*frame);
        const auto power = alone ? spectrum.power() : spectrum.focus();
        measure_partials(power, *f0, partials);
        if (!alone) c.level.set(i, level_of(partials));
        const auto found = formants.find(partials);
        if (found) {
            c.f1.set(i, found->f1);
            c.f2.set(i, found->f2);
            c.f3.set(i, found->f3);
        }
        c.cpp.set(i, cepstrum.prominence(power, *f0));
        c.hnr.set(i, harmonics_to_noise(frame->middle, *f0));
        c.h1h2.set(i, first_minus_second(partials, found ? std::optional(found->f1) : std::nullopt));
        c.ring.set(i, singing_power_ratio(partials));
        c.alpha.set(i, alpha_ratio(partials));
        c.centroid.set(i, centroid(partials));
    }
}

} // namespace luft::voice
