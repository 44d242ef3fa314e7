// Setting by hand what kind of breath, switch or note a mark is.
#pragma once

#include "project/model.h"

#include <string>

namespace luft::cli {

/// The words for each kind of mark, for help and messages.
inline constexpr const char* kKindWords =
    "breath: heard, inferred, inside-phrase, between-phrases; switch: chest-to-head, head-to-chest; note: "
    "onset:glottal|breathy|balanced, offset:clean|breathy|trailing, register:chest|head";

/// Sets it by one of those words. Throws Error(bad_request) for a word that doesn't fit the mark.
void set_kind(project::Mark& mark, const std::string& word);

} // namespace luft::cli
