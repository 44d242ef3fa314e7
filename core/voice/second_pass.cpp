#include "voice/second_pass.h"

#include "voice/closure.h"
#include "voice/formants.h"
#include "voice/front.h"
#include "voice/partials.h"
#include "voice/ring.h"
#include "voice/source_fit.h"
#include "voice/spectrum.h"

namespace luft::voice {
namespace {

void make_room(Curves& c) {
    const std::size_t n = c.frames();
    c.level = Curve<Decibels>(n);
    c.cpp = c.hnr = c.h1h2 = c.ring = c.alpha = Curve<Decibels>(n);
    c.centroid = c.f1 = c.f2 = c.f3 = Curve<Hertz>(n);
}

SourceFitter fitter_for(Setting setting) {
    // Alone, partials stand out of the room's noise by 60 dB; among instruments the weak ones are others'.
    return setting == Setting::alone ? SourceFitter(Decibels(60), 1.0) : SourceFitter(Decibels(40), 1.5);
}

/// Whether the partials are close enough to show formants, and agree on them within a third of an octave.
bool formants_show(const SourceFit& fit, Hertz f0) {
    return f0 <= kHighestForFormants && fit.f1_spread < 0.33 && fit.f2_spread < 0.33;
}

void keep(SourceCurves& to, std::size_t i, const SourceFit& fit) {
    to.pulse[i] = static_cast<float>(fit.pulse);
    to.pulse_spread[i] = static_cast<float>(fit.pulse_spread);
    to.f1[i] = static_cast<float>(fit.f1.value());
    to.f2[i] = static_cast<float>(fit.f2.value());
}

void show_formants(Curves& c, std::size_t i, const SourceFit& fit) {
    c.f1.set(i, fit.f1);
    c.f2.set(i, fit.f2);
}

/// A frame whose partials left open what tract and pulse they come from.
struct OpenFrame {
    std::size_t index;
    Partials partials;
};

/// Fits open frames again among the vowels that the certain ones had.
void fit_again(const std::vector<OpenFrame>& frames, SourceFitter& fitter, Curves& c, SourceCurves& source,
               const Progress& progress) {
    fitter.expect_remembered();
    std::optional<SourceFit> fit;
    std::size_t fitted = 0, done = 0;
    for (const OpenFrame& f : frames) {
        if (done++ % 50 == 0)
            progress.step(static_cast<double>(done) / static_cast<double>(frames.size()),
                          "measuring again what was left open");
        if (!fit || f.index > fitted + 1) {
            fit = fitter.fit(f.partials);
            fitted = f.index;
        }
        if (!fit) continue;
        keep(source, f.index, *fit);
        if (!formants_show(*fit, f.partials.f0)) continue;
        show_formants(c, f.index, *fit);
        c.h1h2.set(f.index, first_minus_second(f.partials, fit->f1));
    }
}

} // namespace

void second_pass(SampleSource& source, Setting setting, const Texture& texture, Curves& c,
                 SourceCurves& source_curves, const Progress& progress) {
    make_room(c);
    const std::vector<float> nothing(c.frames(), Curve<Hertz>::kNone);
    source_curves = {nothing, nothing, nothing, nothing};
    const bool alone = setting == Setting::alone;
    Front front(source);
    Spectrum spectrum;
    CepstralPeak cepstrum;
    FormantFinder formants;
    SourceFitter fitter = fitter_for(setting);
    std::optional<SourceFit> fit;
    std::vector<OpenFrame> open;
    Partials partials;
    const auto frames = static_cast<double>(std::max<std::size_t>(c.frames(), 1));
    constexpr double kOnce = 0.8; // of the work, roughly; the rest is what is fitted again
    while (const auto frame = front.next()) {
        const auto i = static_cast<std::size_t>(frame->index.value);
        if (i >= c.frames()) break;
        if (frame->index.value % 100 == 0)
            progress.step(kOnce * static_cast<double>(i) / frames, "measuring the voice");
        if (alone)
            c.level.set(i, texture.level_at(i)); // nothing else sounds: the level is the voice's, rests too
        const auto f0 = c.f0.at(frame->index);
        if (!f0) {
            fit.reset();
            continue;
        }
        spectrum.measure(*frame);
        const auto power = alone ? spectrum.power() : spectrum.focus();
        measure_partials(power, *f0, partials);
        if (!alone) c.level.set(i, level_of(partials));
        // The tract moves slowly: every other frame is fitted, and the next one takes its answer.
        if (i % 2 == 0 || !fit) {
            fit = fitter.fit(partials);
            if (fit && SourceFitter::is_certain(*fit)) fitter.remember(*fit);
        }
        if (fit) keep(source_curves, i, *fit);
        if (fit && !SourceFitter::is_certain(*fit)) open.push_back({i, partials});
        if (fit && formants_show(*fit, *f0)) show_formants(c, i, *fit);
        if (const auto found = formants.find(partials); found && c.f1.at(frame->index))
            c.f3.set(i, found->f3);
        c.cpp.set(i, cepstrum.prominence(power, *f0));
        c.hnr.set(i, harmonics_to_noise(frame->middle, *f0));
        c.h1h2.set(i, first_minus_second(partials, c.f1.at(frame->index)));
        c.ring.set(i, singing_power_ratio(partials));
        c.alpha.set(i, alpha_ratio(partials));
        c.centroid.set(i, centroid(partials));
    }
    fit_again(open, fitter, c, source_curves, progress.part(kOnce, 1));
}

} // namespace luft::voice
