// The tables of a profile page: shares as bars, measures as spreads.
#pragma once

#include "profile/profile.h"

#include <string>

namespace luft::exports {

/// One row a shade: bar of its share, counts by range and quarter. Empty without shades.
std::string shade_table(const profile::FacetProfile& facet, bool divided);

/// One row a measure: median, spread from 10 to 90 %, medians by range and quarter. Empty without measures.
std::string measure_table(const profile::FacetProfile& facet, bool divided);

/// Rules for these tables, for PageText::extra_css.
std::string_view table_style();

} // namespace luft::exports
