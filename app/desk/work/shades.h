// Finding a shade by typing a few letters.
#pragma once

#include "vocabulary/vocabulary.h"

#include <string>
#include <string_view>
#include <vector>

namespace luft::desk {

/// A shade as it is offered.
struct ShadeOffer {
    vocabulary::Tag tag;
    std::string words; ///< "Onset: glottal (hard)"
    std::string description;
};

/// Shades whose facet or name holds every typed word: those where a word begins with the first typed one
/// come first, then in the vocabulary's order; `recent` ones before others of the same fit. Everything for
/// no words.
std::vector<ShadeOffer> find_shades(const vocabulary::Vocabulary& vocabulary, std::string_view typed,
                                    const std::vector<vocabulary::Tag>& recent = {});

} // namespace luft::desk
