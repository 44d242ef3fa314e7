// The whole analysis of one recording as JSON, schema `luftpause-analysis/1`.
#pragma once

#include "marks/listen.h"
#include "project/model.h"

#include <string>

namespace luft::exports {

/// Every key of the schema is there, in its order; a value that can't be had is null, never 0. Keys beyond
/// the schema: `setting`, `one_register`, the curves `hnr_db`, `alpha_db`, `f3_hz`, and those of
/// mark_values.h. `media.duration_s` is the length of the sound that was heard. UTF-8, one line a curve and
/// a mark, with a line end at the end.
std::string analysis_json(const marks::Analysis& analysis, const project::MediaFacts& facts);

} // namespace luft::exports
