#include "voice/first_pass.h"

#include "base/side_thread.h"
#include "voice/front.h"
#include "voice/loudness.h"
#include "voice/salience.h"
#include "voice/spectrum.h"
#include "voice/yin.h"

#include <algorithm>

namespace luft::voice {
namespace {

double power(std::span<const float> x) {
    double sum = 0;
    for (const float v : x)
        sum += static_cast<double>(v) * v;
    return sum;
}

} // namespace

FirstPass first_pass(SampleSource& source, const Progress& progress) {
    FirstPass pass;
    LoudnessMeter meter(source.format());
    Front front(source);
    // Loudness needs the samples and nothing else: it goes to a second core where there is one.
    SideThread side;
    front.on_block([&](const AudioBlock& block) {
        side.run(
            [&meter, first = block.first, copy = std::vector(block.samples.begin(), block.samples.end())] {
                meter.add({first, copy});
            });
    });
    Spectrum spectrum;
    Yin yin;
    Salience salience;
    std::vector<float> decibels(kClaimBins);
    const double expected = source.expected_duration().value_or(Seconds(600)).value();
    while (const auto frame = front.next()) {
        spectrum.measure(*frame);
        pass.texture.add(*frame, spectrum);
        pass.periodic.add_frame(yin.candidates(frame->middle));
        const auto focus = spectrum.focus();
        const auto pitches = salience.candidates(focus);
        pass.harmonic.add_frame(pitches);
        std::ranges::transform(focus.first(kClaimBins), decibels.begin(),
                               [](float p) { return static_cast<float>(power_level(p).value()); });
        for (const PitchCandidate& c : pitches)
            pass.claims.push_back(measure_claim(decibels, Hertz(c.hz)));
        pass.aperiodicity.push_back(static_cast<float>(yin.aperiodicity()));
        pass.side_ratio.push_back(static_cast<float>(power(frame->side) / (power(frame->middle) + 1e-12)));
        if (frame->index.value % 100 == 0)
            progress.step(std::min(1.0, time_of(frame->index).value() / expected), "listening for the pitch");
    }
    side.finish();
    pass.duration = front.duration();
    pass.loudness = meter.summary();
    pass.momentary = meter.momentary(pass.periodic.frames());
    return pass;
}

} // namespace luft::voice
