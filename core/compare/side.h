// One of the two performances, as far as comparing needs it.
#pragma once

#include "compare/harmony.h"
#include "marks/listen.h"
#include "project/model.h"

#include <optional>
#include <vector>

namespace luft::compare {

struct Side {
    Seconds duration;
    voice::Setting setting = voice::Setting::alone; ///< the ear is less sure under instruments
    Hertz tuning{440};                              ///< A4 as this performance is tuned
    Curve<Hertz> f0;                                ///< sung pitch; none where nobody sings
    Curve<Decibels> level, cpp, h1h2, ring;         ///< of the voice (voice/curves.h); may be empty
    std::vector<marks::Note> notes;                 ///< each list in order of time
    std::vector<marks::Phrase> phrases;
    std::vector<marks::Breath> breaths;
    std::optional<Harmony>
        harmony; ///< what sounds beside the voice; aligning does without where it is missing
};

/// As the ear has just heard it.
Side side_of(const marks::Analysis& analysis);

/// As the project holds it; dropped marks are passed over. The length is the listening's, or where the last
/// curve or mark ends.
Side side_of(const std::optional<project::Listening>& listening, const voice::Curves& curves,
             const std::vector<project::Mark>& marks);

} // namespace luft::compare
