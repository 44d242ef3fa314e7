// A note's colour against what is usual for this singer in this recording.
#pragma once

#include "profile/material.h"

#include <functional>
#include <optional>
#include <vector>

namespace luft::profile {

using ColourOf = std::function<std::optional<double>(const SungNote&)>;

/// For each note: its value less what a straight line over note levels predicts, since louder singing alone
/// raises cepstral peak and ring (cepstral peak against level: r2 0.45 to 0.53, Sampaio et al., PMID
/// 31859213). With under twelve notes, or all equally loud, less the median instead. None where the note has
/// no value.
std::vector<std::optional<double>> levelled(const std::vector<SungNote>& notes, const ColourOf& colour);

/// For each note: log ratio (natural) of its value to the median over notes on the same nearest vowel; none
/// where that vowel has fewer than three notes, or the note no vowel or value.
std::vector<std::optional<double>> for_its_vowel(const std::vector<SungNote>& notes, const ColourOf& colour);

} // namespace luft::profile
