#include "bench/score.h"

namespace luft::bench {
namespace {

template <class T>
void append(std::vector<T>& to, const std::vector<T>& more) {
    to.insert(to.end(), more.begin(), more.end());
}

} // namespace

Confusion& Confusion::operator+=(const Confusion& o) {
    for (std::size_t t = 0; t < 3; ++t)
        for (std::size_t s = 0; s < 3; ++s)
            counts[t][s] += o.counts[t][s];
    return *this;
}

double Confusion::all() const {
    double n = 0;
    for (const auto& row : counts)
        for (const double c : row)
            n += c;
    return n;
}

double Confusion::accuracy() const {
    return all() > 0 ? (counts[0][0] + counts[1][1] + counts[2][2]) / all() : 0;
}

double Confusion::macro_f() const {
    double sum = 0, kinds = 0;
    for (std::size_t k = 0; k < 3; ++k) {
        double there = 0, said = 0;
        for (std::size_t i = 0; i < 3; ++i)
            there += counts[k][i], said += counts[i][k];
        if (there + said > 0) sum += 2 * counts[k][k] / (there + said), ++kinds;
    }
    return kinds > 0 ? sum / kinds : 0;
}

Scores& Scores::operator+=(const Scores& o) {
    scenes += o.scenes, length += o.length;
    taken_for_alone += o.taken_for_alone, taken_for_accompanied += o.taken_for_accompanied;
    pitch += o.pitch;
    append(cents_off, o.cents_off);
    for (const auto& [name, tally] : o.others)
        others[name] += tally;
    breaths += o.breaths, audible_breaths += o.audible_breaths;
    phrase_starts += o.phrase_starts, phrase_ends += o.phrase_ends;
    lenient_starts += o.lenient_starts, lenient_ends += o.lenient_ends;
    switches += o.switches;
    notes += o.notes, pitched_notes += o.pitched_notes;
    onsets += o.onsets, offsets += o.offsets;
    vibratos += o.vibratos;
    append(vibrato_rate, o.vibrato_rate), append(vibrato_extent, o.vibrato_extent);
    append(f1_error, o.f1_error), append(f2_error, o.f2_error);
    vowels += o.vowels, registers += o.registers, split += o.split;
    append(level_spread, o.level_spread);
    instrumental += o.instrumental;
    for (const auto& [kind, reliability] : o.calibration)
        calibration[kind] += reliability;
    return *this;
}

Scores score(const Scene& scene, const marks::Analysis& said) {
    Scores s;
    s.scenes = 1;
    s.length = scene.length();
    (said.setting == voice::Setting::alone ? s.taken_for_alone : s.taken_for_accompanied) = 1;
    score_pitch(s, scene.truth, said);
    score_breaths(s, scene.truth, said);
    score_phrases(s, scene.truth, said);
    score_switches(s, scene.truth, said);
    score_notes(s, scene.truth, said);
    score_registers(s, scene.truth, said);
    score_level(s, scene.truth, said);
    for (const Span& gap : scene.truth.instrumental) {
        s.instrumental.of += gap.length().value();
        for (const marks::Note& n : said.notes)
            s.instrumental.part +=
                std::max(0.0, (std::min(n.span.end, gap.end) - std::max(n.span.start, gap.start)).value());
    }
    return s;
}

} // namespace luft::bench
