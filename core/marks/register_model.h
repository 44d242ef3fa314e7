// The two-state model of register, fitted to one performance.
#pragma once

#include "voice/curves.h"

#include <array>
#include <optional>
#include <vector>

namespace luft::marks {

/// What tells the registers apart, for a stretch of singing: H1-H2 in dB; brightness, as octaves of the
/// spectral centroid over the pitch (how many partials are strong); cepstral peak prominence in dB.
constexpr std::size_t kRegisterFeatures = 3;
using RegisterFeatures = std::array<double, kRegisterFeatures>;

/// None where a feature is missing.
std::optional<RegisterFeatures> register_features(const voice::Curves& curves, std::size_t from,
                                                  std::size_t to);

struct RegisterSample {
    RegisterFeatures features{};
    MidiPitch pitch;
    double weight = 0; ///< frames it stands for
};

/// One of the two states: a Gaussian without correlations over the features in units of their own spread.
struct RegisterState {
    double share = 0.5;
    RegisterFeatures mean{}, variance{};
    double pitch = 0; ///< mean MIDI number
};

struct RegisterModel {
    RegisterState chest, head;
    RegisterFeatures scale{}, centre{}; ///< half the 16-84 % spread, and the median, of each feature
    bool split = false;                 ///< the states stand clearly apart

    /// Log odds of head register against chest for these features.
    [[nodiscard]] double head_score(const RegisterFeatures& features) const;
};

/// Fits by expectation maximisation (Dempster, Laird & Rubin 1977), starting with 'head' where H1-H2 is high,
/// few partials are strong and the period stands out less. `split` asks for 2.5 spreads between the states
/// over all, 2 dB more H1-H2 and fewer strong partials in the head state, and a head state that doesn't lie
/// under the chest state.
RegisterModel fit_registers(const std::vector<RegisterSample>& samples);

} // namespace luft::marks
