// The whole ear: from samples to curves to marks.
#pragma once

#include "base/progress.h"
#include "base/samples.h"
#include "marks/marks.h"
#include "voice/curves.h"

#include <vector>

namespace luft::marks {

/// How the performance was recorded, as far as the caller knows.
enum class Accompaniment { find_out, alone, accompanied };

struct ListenOptions {
    Accompaniment accompaniment = Accompaniment::find_out;
};

/// Everything that the ear says about one recording.
struct Analysis {
    Seconds duration; ///< of the samples actually decoded
    voice::Setting setting = voice::Setting::alone;
    Hertz tuning; ///< A4 as this performance is tuned; 440 when nothing was sung
    voice::Loudness loudness;
    voice::Curves curves;
    std::vector<Note> notes; ///< each list in order of time
    std::vector<Breath> breaths;
    std::vector<Phrase> phrases;
    std::vector<Switch> switches;
    bool one_register = true; ///< the evidence doesn't split into two registers
};

/// Reads the source twice from time 0 (pitch first, then what depends on it) in memory that grows with the
/// curves only. Throws Error(unreadable) when there is no sound in it, Stopped when told to stop.
Analysis listen(SampleSource& source, const ListenOptions& options = {}, const Progress& progress = {});

} // namespace luft::marks
