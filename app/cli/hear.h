// The ear from the command line: which voice to expect, listening, and what was found in a few lines.
#pragma once

#include "base/bytes.h"
#include "cli/verb.h"
#include "marks/listen.h"
#include "project/model.h"

#include <functional>
#include <memory>
#include <string>

namespace luft::cli {

/// `--voice alone|accompanied|auto`.
void voice_option(Verb& verb, marks::Accompaniment& into);

struct Heard {
    project::MediaFacts facts;
    marks::Analysis analysis;
};

/// Opens the recording twice, for its facts and for its sound, and listens to it with progress on the
/// terminal. Throws as media::probe, media::open_sound and marks::listen.
Heard hear(const std::function<std::unique_ptr<ByteSource>()>& open, marks::Accompaniment accompaniment,
           const Progress& progress);

/// "1:23.4, 48000 Hz, 2 channels, 25 pictures a second."
std::string facts_line(const project::MediaFacts& facts);

/// What was found, in two or three lines.
std::string found_text(const marks::Analysis& analysis);

} // namespace luft::cli
