// What cepstral peak and first harmonics hint at, note by note.
#pragma once

#include "profile/material.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::profile {

struct ClosureHint {
    std::string shade; ///< "breathy", "pressed", "firm" or "balanced"
    double peak = 0;   ///< cepstral peak against the usual at that level, dB
    double first = 0;  ///< H1-H2 against the usual at that level, dB
    [[nodiscard]] double far() const;
    [[nodiscard]] std::string words() const; ///< "cepstral peak 3.1 dB under and H1-H2 4.0 dB over …"
};

/// One for each note; none where measures are missing, the note is too short, or the performance has fewer
/// than six such notes, so that there is no 'usual' to hold them against.
std::vector<std::optional<ClosureHint>> closure_hints(const Material& m);

} // namespace luft::profile
