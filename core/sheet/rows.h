// Which rows a sheet has: every phrase one, and every long rest one; what stands in each.
#pragma once

#include "profile/profile.h"

#include <optional>
#include <vector>

namespace luft::sheet {

/// A stretch of the performance that stands on one row. Marks are pointed to inside the source, which must
/// outlive the rows.
struct Row {
    enum class Kind {
        sung, ///< a phrase, or a part of a long one, with the short rest after it
        rest, ///< a long rest, drawn shortened
    };
    Kind kind = Kind::sung;
    Span shown; ///< all media time that belongs to this row; rows follow each other without gap or overlap
    Span sung;  ///< the phrase's own part of it; empty in a rest
    bool goes_on = false;                    ///< the phrase is continued on the next row
    bool continued = false;                  ///< it began on the row before
    const project::Mark* phrase = nullptr;   ///< none where rows are made without phrases
    std::vector<const project::Mark*> notes; ///< in order of time
    std::vector<const project::Mark*> breaths;
    std::vector<const project::Mark*> switches;
    std::vector<const project::SungWord*> words; ///< in their order
    double low = 60, high = 60; ///< MIDI pitches of its notes, at the performance's own tuning
};

/// The notes themselves, as the ribbon wants them, of marks that are notes.
std::vector<const marks::Note*> sung_notes(const std::vector<const project::Mark*>& notes);

/// Marks of a kind that aren't dropped, in order of time.
std::vector<const project::Mark*> of_kind(const profile::Source& source, project::MarkKind kind);

/// Lowest and highest pitch of notes at the performance's own tuning; none without notes.
std::optional<std::pair<double, double>> range_of(const std::vector<const project::Mark*>& notes,
                                                  double tuning);

/// Room before a phrase that begins after a rest, so that its breath stands on its own row.
inline constexpr Seconds kLead{0.6};
/// A rest from this on takes a row of its own (no source: what a row has room for).
inline constexpr Seconds kLongRest{4};

/// Rows from 0 to the end of the recording, for rows on which `longest` of sung time has room. Without
/// phrases, rests of a second between notes end a row; without notes all is one rest. Longer phrases are cut
/// before a note.
std::vector<Row> rows(const profile::Source& source, Seconds longest);

/// Where to cut a stretch that is too long: before its last note that begins late enough; at `longest` where
/// none does.
Seconds cut_of(Span span, Seconds longest, const std::vector<const project::Mark*>& notes);

/// The row that shows a time: the first or last one for times outside. 0 when there are no rows.
std::size_t row_at(const std::vector<Row>& rows, Seconds time);

} // namespace luft::sheet
