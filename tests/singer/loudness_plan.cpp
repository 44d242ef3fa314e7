#include "singer/loudness_plan.h"

#include "singer/noises.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace luft::singer {

using marks::LevelShape;
using marks::OffsetKind;
using marks::Register;
using std::numbers::pi;

double step_up(double t, double from, double length) {
    if (length <= 0) return t >= from ? 1 : 0;
    return 0.5 - 0.5 * std::cos(pi * std::clamp((t - from) / length, 0.0, 1.0));
}

double voicing_of(const PlacedNote& n, double t) {
    const Manner m = manner_of(n.note, n.joined, n.joins, n.cut);
    double v = 1;
    if (!n.joined || m.rise > Seconds(0)) v *= step_up(t, n.voiced.start.value(), m.rise.value());
    if (n.joins) return v;
    const double end = n.voiced.end.value(), fall = m.fall.value();
    if (!n.cut && n.note.end == OffsetKind::trailing) {
        // 20 dB down in a straight line of decibels, then out.
        const double u = std::clamp((t - (end - fall)) / fall, 0.0, 1.0);
        return v * amplitude_of(Decibels(-20 * u)) * (1 - step_up(t, end - 0.06, 0.06));
    }
    return v * (1 - step_up(t, end - fall, fall));
}

double path_db(const PlacedNote& n, double t) {
    const double u =
        std::clamp((t - n.voiced.start.value()) / std::max(1e-3, n.voiced.length().value()), 0.0, 1.0);
    const double change = n.note.path.change.value();
    switch (n.note.path.shape) {
    case LevelShape::growing:
        return change * (u - 0.5);
    case LevelShape::fading:
        return -std::abs(change) * (u - 0.5);
    case LevelShape::swelling:
        return change * std::sin(pi * u) * std::sin(pi * u);
    case LevelShape::fluctuating: {
        constexpr double kRate = 2.2; // Hz: slower than vibrato, so that it is heard as level
        return 0.5 * change * std::sin(2 * pi * kRate * (t - n.voiced.start.value()));
    }
    case LevelShape::steady:
        break;
    }
    return 0;
}

double head_of(const PlacedNote& n, double t) {
    const double own = n.note.sung_in == Register::head ? 1 : 0;
    if (!n.note.flip) return own;
    const double other = n.note.flip->to == Register::head ? 1 : 0;
    return own + (other - own) * step_up(t, (n.whole.start + n.note.flip->after).value() - 0.03, 0.06);
}

Formants formants_of(const SungNote& note, const Singer& singer) {
    return note.formants ? *note.formants : sung_formants(singer.voice, note.vowel);
}

double GainBook::voice_db(const Formants& formants, Hertz f0, double rd) {
    const int key = static_cast<int>(std::lround(rd * 100));
    auto [it, fresh] = harmonics_.try_emplace(key);
    if (fresh) it->second = lf_harmonics(lf_pulse(key / 100.0), 100);
    Tract tract(rate_);
    tract.shape(formants);
    double power = 0;
    for (std::size_t k = 0; k < it->second.size(); ++k) {
        const Hertz f = f0 * static_cast<double>(k + 1);
        if (f.value() > 0.44 * rate_.per_second) break;
        const double a = it->second[k] * tract.gain(f);
        power += a * a / 2;
    }
    return -power_level(power).value();
}

double GainBook::noise_db(const Formants& formants) const {
    Tract tract(rate_);
    tract.shape(formants);
    constexpr int kPoints = 400;
    double power = 0;
    for (int k = 0; k < kPoints; ++k) {
        const double g = tract.gain(Hertz((k + 0.5) / kPoints * rate_.per_second / 2));
        power += g * g / kPoints;
    }
    return -power_level(power).value();
}

Gains GainBook::gains(const SungNote& note, const Singer& singer) {
    const Formants formants = formants_of(note, singer);
    const Hertz f0 = frequency_of(note.pitch, singer.tuning);
    Gains g;
    g.chest_db = voice_db(formants, f0, singer.rd_chest);
    g.head_db = voice_db(formants, f0, singer.rd_head);
    g.noise_db = noise_db(formants);
    if (is_voiced(note.consonant)) g.murmur_db = voice_db(murmur(note.consonant), f0, singer.rd_chest);
    return g;
}

Neighbour neighbour(const std::vector<PlacedNote>& notes, std::size_t i, double t, double width) {
    const PlacedNote& n = notes[i];
    const double half = width / 2, start = n.whole.start.value(), end = n.whole.end.value();
    if (n.joined && t < start + half) return {i - 1, 1 - step_up(t, start - half, width)};
    if (n.joins && t > end - half) return {i + 1, step_up(t, end - half, width)};
    return {};
}

} // namespace luft::singer
