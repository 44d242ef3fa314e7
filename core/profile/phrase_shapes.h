// How the level goes through each phrase, and how the voice is marked from soft to loud.
#pragma once

#include "profile/material.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::profile {

/// The key of the shade that a shape is called by: "crescendo", "decrescendo", "swell", "fluctuating",
/// "steady".
const char* shade_of(marks::LevelShape shape);

/// One for each phrase that counts, in order: as it was heard; for phrases that the coach drew, measured anew
/// over their notes. None where a phrase is too short, or there is no curve.
std::vector<std::optional<marks::PhraseLevel>> phrase_shapes(const Material& m);

/// "it swells by 6 dB and falls again, highest at 55 % of its length".
std::string shape_words(const marks::PhraseLevel& level);

/// "Against this singer's own range here the notes are marked p 12, mp 30, mf 41 and f 20; …". Empty when no
/// note is marked.
std::string marked_words(const Material& m);

} // namespace luft::profile
