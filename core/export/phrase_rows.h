// The sheet laid out so that every phrase stands on one row, for pictures of single phrases.
#pragma once

#include "sheet/layout.h"

#include <functional>

namespace luft::exports {

/// Rows of `width` units without a margin, at a scale at which no phrase is cut in two as long as it lasts no
/// more than half a minute on 960 units. `wanted` as in sheet::View. The source must outlive the layout.
sheet::Layout phrase_rows(const profile::Source& source, double width,
                          std::function<bool(const project::Moment&)> wanted = {});

} // namespace luft::exports
