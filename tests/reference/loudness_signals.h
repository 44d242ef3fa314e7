// The minimum requirement test signals of EBU Tech 3341 (2016) and EBU Tech 3342, as far as they can be made
// from the text (the programmes of 3341-7 and -8, and the files of 20 to 23, can't).
#pragma once

#include <array>
#include <string_view>

namespace luft::reference {

/// A stretch of a 1000 Hz tone, in phase on left and right.
struct ToneStretch {
    double seconds = 0;
    double peak_dbfs = 0; ///< per channel; kSilent = silence
};
inline constexpr double kSilent = -300;

struct ToneCase {
    std::string_view name;
    std::array<ToneStretch, 5> parts; ///< a length of 0 ends the list
    double expected;                  ///< LUFS for 3341, LU for 3342
};

/// EBU Tech 3341: integrated loudness, +-0.1 LU.
inline constexpr double kLoudnessTolerance = 0.1;
inline constexpr std::array<ToneCase, 5> kIntegratedCases{{
    {"3341-1", {{{20, -23}}}, -23},
    {"3341-2", {{{20, -33}}}, -33},
    {"3341-3", {{{10, -36}, {60, -23}, {10, -36}}}, -23},
    {"3341-4", {{{10, -72}, {10, -36}, {60, -23}, {10, -36}, {10, -72}}}, -23},
    {"3341-5", {{{20, -26}, {20.1, -20}, {20, -26}}}, -23},
}};
/// 3341-6: 5.0 channels, left and right, centre, both surrounds; 20 s; integrated -23.0 +-0.1 LUFS.
inline constexpr double kCase6Front = -28, kCase6Centre = -24, kCase6Surround = -30;

/// 3341-9 (short-term) and 3341-12 (momentary): a pattern repeated; the reading is constant at -23.0 +-0.1
/// LUFS after 3 s and 1 s.
struct PatternCase {
    std::string_view name;
    ToneStretch loud, soft;
    int times;
    double constant_after;
};
inline constexpr PatternCase kCase9{"3341-9", {1.34, -20}, {1.66, -30}, 5, 3};
inline constexpr PatternCase kCase12{"3341-12", {0.18, -20}, {0.22, -30}, 25, 1};

/// 3341-10 (short-term) and 3341-13 (momentary): 20 files, i = 0 to 19, with silence of i steps, a tone at
/// -23 dBFS and 1 s of silence; the highest reading of each is -23.0 +-0.1 LUFS. 3341-11 and 3341-14: one
/// file of 20 parts, i = 0 to 19, with silence of i steps, a tone at -38 + i dBFS and silence up to twice the
/// tone's length; the highest readings are -38, -37 ... -19 +-0.1 LUFS in turn.
struct ShiftCase {
    double step, tone;
};
inline constexpr ShiftCase kShortTermShift{0.15, 3}, kMomentaryShift{0.02, 0.4};

/// 3341-15 to 19: true peak of sines, +0.2/-0.4 dB.
struct PeakCase {
    std::string_view name;
    int divisor; ///< frequency = sample rate / divisor
    double phase_degrees;
    double amplitude;
    double expected; ///< dBTP
};
inline constexpr double kPeakAbove = 0.2, kPeakBelow = 0.4;
inline constexpr std::array<PeakCase, 5> kPeakCases{{
    {"3341-15", 4, 0, 0.50, -6},
    {"3341-16", 4, 45, 0.50, -6},
    {"3341-17", 6, 60, 0.50, -6},
    {"3341-18", 8, 67.5, 0.50, -6},
    {"3341-19", 4, 45, 1.41, 3},
}};

/// EBU Tech 3342: loudness range, +-1 LU.
inline constexpr double kRangeTolerance = 1;
inline constexpr std::array<ToneCase, 4> kRangeCases{{
    {"3342-1", {{{20, -20}, {20, -30}}}, 10},
    {"3342-2", {{{20, -20}, {20, -15}}}, 5},
    {"3342-3", {{{20, -40}, {20, -20}}}, 20},
    {"3342-4", {{{20, -50}, {20, -35}, {20, -20}, {20, -35}, {20, -50}}}, 15},
}};

} // namespace luft::reference
