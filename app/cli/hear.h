// The ear from the command line: which voice to expect, listening, and what was found in a few lines.
#pragma once

#include "base/bytes.h"
#include "cli/verb.h"
#include "marks/listen.h"
#include "media/media.h"
#include "project/model.h"

#include <functional>
#include <memory>
#include <string>

namespace luft::cli {

/// What the user says about a recording before it is listened to.
struct Listening {
    marks::Accompaniment accompaniment = marks::Accompaniment::find_out;
    bool partial = false; ///< take a recording that has lost its end as far as it goes
};

/// `--voice alone|accompanied|auto`, and `--partial`.
void listening_options(Verb& verb, Listening& into);

/// Throws as media::probe, and Error(unreadable) when the recording has lost its end and isn't taken so.
media::Facts probe(std::unique_ptr<ByteSource> bytes, bool partial);

struct Heard {
    project::MediaFacts facts;
    marks::Analysis analysis;
};

/// Opens the recording twice, for its facts and for its sound, and listens to it with progress on the
/// terminal. Throws as probe, media::open_sound and marks::listen.
Heard hear(const std::function<std::unique_ptr<ByteSource>()>& open, const Listening& options,
           const Progress& progress);

/// "1:23.4, 48000 Hz, 2 channels, 25 pictures a second."
std::string facts_line(const project::MediaFacts& facts);

/// What was found, in two or three lines.
std::string found_text(const marks::Analysis& analysis);

} // namespace luft::cli
