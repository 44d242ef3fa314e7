// A recording into a project: probed, listened to, stored, with moments proposed.
#pragma once

#include "base/bytes.h"
#include "base/progress.h"
#include "marks/listen.h"
#include "media/media.h"
#include "project/project.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>

namespace luft::intake {

/// What is said about a recording before it is listened to.
struct Listening {
    marks::Accompaniment accompaniment = marks::Accompaniment::find_out;
    bool partial = false; ///< take a recording that has lost its end as far as it goes
};

struct Heard {
    project::MediaFacts facts;
    marks::Analysis analysis;
};

/// The performance's own facts, out of what the media file says.
project::MediaFacts facts_of(const media::Facts& facts);

/// Throws as media::probe, and Error(unreadable) when the recording has lost its end and isn't taken so.
/// `remedy` says how it can be taken nevertheless.
media::Facts probe(std::unique_ptr<ByteSource> bytes, bool partial, const std::string& remedy);

/// Opens the recording twice, for its facts and for its sound, and listens to it. Throws as probe,
/// media::open_sound and marks::listen; Stopped.
Heard hear(const std::function<std::unique_ptr<ByteSource>()>& open, const Listening& options,
           const std::string& remedy, const Progress& progress);

/// What is to be added, and how.
struct Recording {
    std::filesystem::path media;
    project::Performance details; ///< label, performer, source, permission; a label is made up when empty
    bool carry = false;
    bool listen = true;
    Listening listening;
    std::string remedy; ///< see probe
};

/// What came of it.
struct Added {
    project::Performance performance;
    std::optional<Heard> heard; ///< none when it wasn't to be listened to
    int proposed = 0;           ///< moments
};

/// Everything that can go wrong with the recording goes wrong before the project is touched. Throws
/// Error(bad_request) for a label that is taken, Error(unreadable) without sound, and as the above. When it
/// was listened to, the piece's words are spread over its notes (project/spread_words.h).
Added add(project::Project& project, const Recording& recording, const Progress& progress);

/// Stores what was heard of a performance again; what the coach did stays. Proposes moments anew, and spreads
/// the piece's words anew around those placed by hand.
Added store_again(project::Project& project, const project::Performance& performance, Heard heard);

/// Listens to a performance again, and stores what was heard. Throws as hear.
Added listen_again(project::Project& project, const project::Performance& performance,
                   marks::Accompaniment accompaniment, const Progress& progress);

} // namespace luft::intake
