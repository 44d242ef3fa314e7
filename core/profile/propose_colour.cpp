#include "profile/closure_hint.h"
#include "profile/proposals.h"
#include "profile/thresholds.h"
#include "profile/words.h"

#include <algorithm>

namespace luft::profile {
namespace {

/// Hints are offered with less weight than what is measured, and never surer than this.
constexpr Confidence kHintAtMost{0.6};
constexpr double kFarHint = 12; ///< dB, both measures together, that count as fully telling (no source)

} // namespace

void propose_from_colour(const Material& m, std::vector<Proposal>& to) {
    const auto hints = closure_hints(m);
    for (std::size_t i = 0; i < m.notes.size(); ++i) {
        const auto& n = m.notes[i];
        if (!hints[i] || hints[i]->shade == "balanced" || n.length() < kHeldNote) continue;
        const std::string how = hints[i]->shade == "breathy"   ? "air beside the tone"
                                : hints[i]->shade == "pressed" ? "a pressed tone"
                                                               : "a firm closure";
        add_proposal(m, to, n.span(), Seconds(0.4), {"closure", hints[i]->shade}, project::Verdict::explain,
                     0.6 * std::min(1.0, hints[i]->far() / kFarHint),
                     {std::min(n.note->confidence.value, kHintAtMost.value)},
                     "the sound of " + Material::name(n) + " suggests " + how + " (" + hints[i]->words() +
                         ")");
    }
}

} // namespace luft::profile
