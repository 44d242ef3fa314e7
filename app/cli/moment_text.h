// Moments for a person and for a program.
#pragma once

#include "cli/json_text.h"
#include "cli/quote.h"
#include "project/model.h"

#include <string>
#include <string_view>

namespace luft::cli {

std::string_view word(project::Verdict verdict);

/// "3  kept  0:12.3-0:13.1  watch  onset:glottal", with what it is compared with, the remark and the
/// evidence under it.
std::string moment_text(const project::Moment& moment, const Labels& labels);

/// "moment 3 at 0:12.3", for messages.
std::string moment_name(const project::Moment& moment);

/// Keys: id, start_s, end_s, state, origin, verdict, shades, remark, evidence, confidence, drill (null for
/// none), beside (as quote_value).
Json moment_value(const project::Moment& moment, const Labels& labels);

} // namespace luft::cli
