// What an answer is worth against the truth, as sums that can be added up over scenes.
#pragma once

#include "bench/calibration.h"
#include "bench/scene.h"
#include "marks/listen.h"
#include "reference/melody_metric.h"
#include "reference/note_metric.h"

#include <array>
#include <map>
#include <string>
#include <vector>

namespace luft::bench {

/// How often a kind (row) was taken for a kind (column).
struct Confusion {
    std::array<std::array<double, 3>, 3> counts{};
    void add(int truth, int said) {
        ++counts[static_cast<std::size_t>(truth)][static_cast<std::size_t>(said)];
    }
    Confusion& operator+=(const Confusion& o);
    [[nodiscard]] double all() const;
    /// Share on the diagonal; of nothing, 0.
    [[nodiscard]] double accuracy() const;
    /// Mean over the kinds that occur of each kind's F1 (Sokolova & Lapalme 2009, Information Processing &
    /// Management 45(4), table 3).
    [[nodiscard]] double macro_f() const;
};

/// A share counted up.
struct Portion {
    double part = 0, of = 0;
    Portion& operator+=(Portion o) {
        part += o.part, of += o.of;
        return *this;
    }
};

/// A pitch tracker's sums: of ours, or of another for comparison.
using Trackers = std::map<std::string, reference::MelodyTally>;

struct Scores {
    int scenes = 0;
    Seconds length{0};
    int taken_for_alone = 0, taken_for_accompanied = 0;

    reference::MelodyTally pitch;
    std::vector<double> cents_off; ///< of frames that are right in pitch
    Trackers others;               ///< by "method+shift in frames"

    reference::Score breaths, audible_breaths;
    reference::Score phrase_starts, phrase_ends, lenient_starts, lenient_ends;
    reference::Score switches;
    reference::Score notes, pitched_notes;
    Confusion onsets, offsets;
    reference::Score vibratos;
    std::vector<double> vibrato_rate, vibrato_extent; ///< absolute errors, Hz and cents
    std::vector<double> f1_error, f2_error;           ///< relative, absolute value
    Portion vowels;                                   ///< notes under 400 Hz that were given one
    Portion registers;                                ///< frames of songs in two registers
    Portion split;                                    ///< songs in one register that were split into two
    std::vector<double> level_spread;                 ///< dB, of each scene
    Portion instrumental;                             ///< seconds of notes in seconds without singing
    Calibration calibration;

    Scores& operator+=(const Scores& o);
};

/// Every part of `score`, by itself. Each leaves alone what the truth doesn't know.
void score_pitch(Scores& to, const Truth& truth, const marks::Analysis& said);
void score_breaths(Scores& to, const Truth& truth, const marks::Analysis& said);
void score_phrases(Scores& to, const Truth& truth, const marks::Analysis& said);
void score_switches(Scores& to, const Truth& truth, const marks::Analysis& said);
void score_notes(Scores& to, const Truth& truth, const marks::Analysis& said);
void score_registers(Scores& to, const Truth& truth, const marks::Analysis& said);
void score_level(Scores& to, const Truth& truth, const marks::Analysis& said);

Scores score(const Scene& scene, const marks::Analysis& said);

} // namespace luft::bench
