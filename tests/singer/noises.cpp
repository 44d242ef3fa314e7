#include "singer/noises.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace luft::singer {
namespace {

using std::numbers::pi;

void scale_to(std::vector<float>& x, double rms) {
    double power = 0;
    for (const float v : x)
        power += double(v) * v;
    if (power <= 0) return;
    const double k = rms / std::sqrt(power / static_cast<double>(x.size()));
    for (float& v : x)
        v = static_cast<float>(v * k);
}

std::size_t count(Seconds length, SampleRate rate) {
    return static_cast<std::size_t>(std::max(0.0, std::round(length.value() * rate.per_second)));
}

/// 0 to 1 and back: rises until `peak` (share of the length), falls after it.
double arch(double x, double peak) {
    const double u = x < peak ? x / peak : (1 - x) / (1 - peak);
    return 0.5 - 0.5 * std::cos(pi * std::clamp(u, 0.0, 1.0));
}

std::vector<float> hiss(Seconds length, std::vector<Formant> peaks, double rms, SampleRate rate,
                        Random random) {
    std::vector<float> out(count(length, rate));
    std::vector<Resonator> row;
    for (const Formant& f : peaks) {
        if (f.frequency.value() > 0.45 * rate.per_second) continue;
        row.emplace_back().tune(f, rate);
    }
    double last = 0;
    for (std::size_t n = 0; n < out.size(); ++n) {
        double x = random.bell();
        for (auto& r : row)
            x = r.run(x);
        const double high = x - last; // a difference keeps the low end out
        last = x;
        out[n] = static_cast<float>(high * std::sqrt(arch(double(n) / double(out.size()), 0.5)));
    }
    scale_to(out, rms);
    return out;
}

std::vector<float> stop(Hertz burst, double rms, SampleRate rate, Random random) {
    const auto noise = hiss(Seconds(0.018), {{burst, Hertz(1500)}}, rms, rate, random);
    std::vector<float> out(count(length_of(Consonant::t), rate));
    const std::size_t at = out.size() - noise.size();
    for (std::size_t n = 0; n < noise.size(); ++n)
        out[at + n] = noise[n];
    return out;
}

} // namespace

std::vector<float> breath_noise(Seconds length, double rms, SampleRate rate, Random random) {
    std::vector<float> out(count(length, rate));
    Tract tract(rate);
    Formants open = neutral_formants();
    for (Formant& f : open)
        f.bandwidth = f.bandwidth * 3;
    double last = 0;
    for (std::size_t n = 0; n < out.size(); ++n) {
        const double x = double(n) / double(out.size());
        if (n % 64 == 0) { // F1 and the centre of the spectrum rise with the flow (Werner et al. 2021)
            Formants now = open;
            const double flow = arch(x, 0.65);
            now[0].frequency = open[0].frequency * (1 + 0.2 * flow);
            tract.shape(now);
        }
        const double v = tract.run(random.bell());
        // Half of the radiation's rise: noise is made along the tract, not at one place.
        out[n] = static_cast<float>((v - 0.7 * last) * arch(x, 0.65));
        last = v;
    }
    scale_to(out, rms);
    return out;
}

Seconds length_of(Consonant c) {
    switch (c) {
    case Consonant::s:
        return Seconds(0.110);
    case Consonant::sh:
        return Seconds(0.120);
    case Consonant::f:
        return Seconds(0.090);
    case Consonant::h:
        return Seconds(0.080);
    case Consonant::t:
    case Consonant::k:
        return Seconds(0.065);
    case Consonant::m:
    case Consonant::n:
        return Seconds(0.075);
    case Consonant::l:
        return Seconds(0.060);
    case Consonant::none:
        break;
    }
    return Seconds(0);
}

Decibels level_of(Consonant c) {
    switch (c) {
    case Consonant::s:
        return Decibels(-16);
    case Consonant::sh:
        return Decibels(-14);
    case Consonant::f:
        return Decibels(-26);
    case Consonant::h:
        return Decibels(-20);
    case Consonant::t:
    case Consonant::k:
        return Decibels(-16);
    default:
        return Decibels(-7);
    }
}

std::vector<float> consonant_noise(Consonant c, double rms, SampleRate rate, Random random) {
    switch (c) {
    case Consonant::s:
        return hiss(length_of(c), {{Hertz(6500), Hertz(1800)}, {Hertz(5200), Hertz(2500)}}, rms, rate,
                    random);
    case Consonant::sh:
        return hiss(length_of(c), {{Hertz(3000), Hertz(1000)}, {Hertz(4500), Hertz(2500)}}, rms, rate,
                    random);
    case Consonant::f:
        return hiss(length_of(c), {}, rms, rate, random);
    case Consonant::t:
        return stop(Hertz(4200), rms, rate, random);
    case Consonant::k:
        return stop(Hertz(1900), rms, rate, random);
    default:
        return {};
    }
}

Formants murmur(Consonant c) {
    if (c == Consonant::l)
        return {{{Hertz(310), Hertz(80)},
                 {Hertz(1050), Hertz(120)},
                 {Hertz(2880), Hertz(280)},
                 {Hertz(3500), Hertz(300)},
                 {Hertz(4500), Hertz(300)}}};
    const double f2 = c == Consonant::m ? 1100 : 1400;
    return {{{Hertz(270), Hertz(90)},
             {Hertz(f2), Hertz(350)},
             {Hertz(2200), Hertz(350)},
             {Hertz(3300), Hertz(400)},
             {Hertz(4500), Hertz(400)}}};
}

} // namespace luft::singer
