// The parts of the default vocabulary; only default_vocabulary() puts them together.
#pragma once

#include "vocabulary/vocabulary.h"

#include <vector>

namespace luft::vocabulary {

std::vector<Facet> default_facets();

/// The drill book: exercises of common practice, worded by us; they have no source to name. In three parts,
/// each ordered as a lesson would take them.
std::vector<Drill> breath_drills();
std::vector<Drill> tone_drills();
std::vector<Drill> song_drills();

} // namespace luft::vocabulary
