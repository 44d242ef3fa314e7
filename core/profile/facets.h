// One function a facet that sound says something about; each in a file of its own.
#pragma once

#include "profile/draft.h"

#include <functional>
#include <string>

namespace luft::profile {

void onsets(const Material& m, Draft& d);      ///< facet_edges.cpp
void offsets(const Material& m, Draft& d);     ///< facet_edges.cpp
void vowel_shape(const Material& m, Draft& d); ///< facet_vowels.cpp
void larynx(const Material& m, Draft& d);      ///< facet_larynx.cpp
void dynamics(const Material& m, Draft& d);    ///< facet_dynamics.cpp
void registers(const Material& m, Draft& d);   ///< facet_register.cpp
void closure(const Material& m, Draft& d);     ///< facet_closure.cpp
void resonance(const Material& m, Draft& d);   ///< facet_resonance.cpp
void breaths(const Material& m, Draft& d);     ///< facet_breath.cpp
void intonation(const Material& m, Draft& d);  ///< facet_intonation.cpp
void vibrato(const Material& m, Draft& d);     ///< facet_vibrato.cpp
void phrasing(const Material& m, Draft& d);    ///< facet_phrasing.cpp

/// The function for a facet's key; null for facets that only the coach judges.
using FacetWork = void (*)(const Material&, Draft&);
FacetWork facet_work(const std::string& key);

} // namespace luft::profile
