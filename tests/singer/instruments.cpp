#include "singer/instruments.h"

#include "singer/tract.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace luft::singer {
namespace {

using std::numbers::pi;

constexpr double kDamp = 0.08; // s

std::vector<float> string(Hertz f, double brightness, Seconds die, std::size_t samples, SampleRate rate,
                          Random random) {
    const double period = rate.per_second / f.value();
    const double whole = std::floor(period - 0.5 - 0.1); // the average delays by half a sample
    const double rest = period - 0.5 - whole, c = (1 - rest) / (1 + rest);
    const double loss = std::pow(10.0, -3 * period / rate.per_second / die.value());
    std::vector<double> line(static_cast<std::size_t>(std::max(2.0, whole)));
    double smooth = 0, mean = 0;
    for (double& v : line)
        smooth += brightness * (random.bell() - smooth), v = smooth, mean += v;
    for (double& v : line)
        v -= mean / static_cast<double>(line.size());
    std::vector<float> out(samples);
    double last = 0, x1 = 0, y1 = 0;
    for (std::size_t n = 0, at = 0; n < samples; ++n, at = (at + 1) % line.size()) {
        const double v = line[at], average = loss * 0.5 * (v + last);
        last = v;
        const double y = c * average + x1 - c * y1;
        x1 = average, y1 = y;
        line[at] = y;
        out[n] = static_cast<float>(v);
    }
    return out;
}

std::vector<float> keyboard(Hertz f, std::size_t samples, SampleRate rate) {
    std::vector<float> out(samples);
    for (int k = 1; k <= 6; ++k) {
        const double fk = f.value() * k * std::sqrt(1 + 0.0004 * k * k); // stiff strings stretch
        if (fk > 0.45 * rate.per_second) break;
        const double amplitude = 1.0 / (k * k), die = 1.1 / (0.6 + 0.4 * k);
        for (std::size_t n = 0; n < samples; ++n) {
            const double t = double(n) / rate.per_second;
            out[n] += static_cast<float>(amplitude * std::exp(-t / die) * std::sin(2 * pi * fk * t));
        }
    }
    return out;
}

struct Bowing {
    double swing = 0; ///< cents of vibrato at 5.5 Hz
    Seconds rise;
    Hertz bright; ///< over it partials fall faster
};

/// Partials of a sounding string.
void add_bowed(std::vector<float>& out, Hertz f, const Bowing& how, SampleRate rate, Random random) {
    constexpr int kPartials = 16;
    double phase = 2 * pi * random.uniform();
    const double vibrato = 2 * pi * random.uniform();
    for (std::size_t n = 0; n < out.size(); ++n) {
        const double t = double(n) / rate.per_second;
        const double fn = f.value() * std::exp2(how.swing / 1200 * std::sin(vibrato + 2 * pi * 5.5 * t));
        phase = std::fmod(phase + 2 * pi * fn / rate.per_second, 2 * pi);
        // sin(k x) by the recurrence sin((k+1)x) = 2 cos x sin(kx) - sin((k-1)x)
        const double turn = 2 * std::cos(phase);
        double before = 0, now = std::sin(phase), sum = 0;
        for (int k = 1; k <= kPartials && k * fn < 0.45 * rate.per_second; ++k) {
            const double over = k * fn / how.bright.value();
            sum += now / (k * (1 + over * over));
            const double next = turn * now - before;
            before = now, now = next;
        }
        out[n] += static_cast<float>(sum * (1 - std::exp(-t / how.rise.value())));
    }
}

std::vector<float> low_drum(std::size_t samples, SampleRate rate) {
    std::vector<float> out(samples);
    double phase = 0;
    for (std::size_t n = 0; n < samples; ++n) {
        const double t = double(n) / rate.per_second;
        phase += (55 + 55 * std::exp(-t / 0.03)) / rate.per_second;
        out[n] = static_cast<float>(std::exp(-t / 0.12) * std::sin(2 * pi * phase));
    }
    return out;
}

std::vector<float> brush(std::size_t samples, SampleRate rate, Random random) {
    std::vector<float> out(samples);
    Resonator r;
    r.tune({Hertz(3000), Hertz(3500)}, rate);
    double last = 0;
    for (std::size_t n = 0; n < samples; ++n) {
        const double t = double(n) / rate.per_second, v = r.run(random.bell());
        out[n] = static_cast<float>((v - last) * std::min(1.0, t / 0.01) * std::exp(-t / 0.07));
        last = v;
    }
    return out;
}

/// Brings the first 150 ms to an RMS of 0.1, and fades in (2 ms) and out.
void finish(std::vector<float>& x, Seconds length, SampleRate rate) {
    const auto loud = std::min(x.size(), static_cast<std::size_t>(0.15 * rate.per_second));
    double power = 0;
    for (std::size_t n = 0; n < loud; ++n)
        power += double(x[n]) * x[n];
    const double k = power > 0 ? 0.1 / std::sqrt(power / static_cast<double>(loud)) : 0;
    for (std::size_t n = 0; n < x.size(); ++n) {
        const double t = double(n) / rate.per_second, over = (t - length.value()) / kDamp;
        const double in = std::min(1.0, t / 0.002), out = over <= 0 ? 1 : 0.5 + 0.5 * std::cos(pi * over);
        x[n] = static_cast<float>(double(x[n]) * k * in * out);
    }
}

} // namespace

std::vector<float> tone(Instrument instrument, MidiPitch pitch, Seconds length, SampleRate rate,
                        Random random) {
    const auto samples = static_cast<std::size_t>((length.value() + kDamp) * rate.per_second);
    const Hertz f = frequency_of(pitch);
    std::vector<float> out;
    switch (instrument) {
    case Instrument::plucked:
        out = string(f, 0.45, Seconds(2.6), samples, rate, random);
        break;
    case Instrument::bass:
        out = string(f, 0.12, Seconds(3.5), samples, rate, random);
        break;
    case Instrument::struck:
        out = keyboard(f, samples, rate);
        break;
    case Instrument::low_drum:
        out = low_drum(samples, rate);
        break;
    case Instrument::brush:
        out = brush(samples, rate, random);
        break;
    case Instrument::bowed:
        out.resize(samples);
        add_bowed(out, f, {18, Seconds(0.04), Hertz(2500)}, rate, random);
        break;
    case Instrument::pad:
        out.resize(samples);
        add_bowed(out, f * std::exp2(4.0 / 1200), {0, Seconds(0.1), Hertz(1000)}, rate, random.fork());
        add_bowed(out, f * std::exp2(-4.0 / 1200), {0, Seconds(0.1), Hertz(1000)}, rate, random.fork());
        break;
    }
    finish(out, length, rate);
    return out;
}

} // namespace luft::singer
