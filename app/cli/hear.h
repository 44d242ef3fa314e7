// The ear from the command line: which voice to expect, listening, and what was found in a few lines.
#pragma once

#include "cli/verb.h"
#include "intake/intake.h"

#include <string>

namespace luft::cli {

/// What to do about a recording that has lost its end, as an Error says it.
inline constexpr const char* kPartialRemedy = "take it as far as it goes with --partial.";

/// `--voice alone|accompanied|auto`, and `--partial`.
void listening_options(Verb& verb, intake::Listening& into);

/// "1:23.4, 48000 Hz, 2 channels, 25 pictures a second."
std::string facts_line(const project::MediaFacts& facts);

/// "3 phrases, 4 breaths (3 heard, 1 inferred), 0 register switches and 12 notes"
std::string counts_text(const marks::Analysis& analysis);

/// What was found, in two or three lines.
std::string found_text(const marks::Analysis& analysis);

} // namespace luft::cli
