// The words of a piece under the notes of a performance.
#pragma once

#include "project/model.h"

#include <string>
#include <vector>

namespace luft::project {

/// The piece's words as they stand under the line of a performance: lines onto phrases (line_places.h), then
/// the syllables of the lines onto those phrases' notes (note_places.h). A syllable stands at the start of
/// the note it is sung on. Lines and syllables are made of the text by sung_lines.h.
///
/// What the coach has placed by hand among `standing` stays where it is, as long as it is still in the text
/// (words are found again in order, by the longest common run of the old text and the new), and keeps its id;
/// so do the others, which are spread around those: a word's notes end where a placed one stands, and what
/// follows a placed one begins there. Where a placed one leaves no note for those before it, they share the
/// time up to it evenly.
///
/// Of the marks, phrases and notes count that aren't dropped; a note belongs to the phrase that its middle
/// lies in. Without phrases, rests of a second between notes end one. Without notes nothing has a place: only
/// what the coach has placed stays. Times never fall from one word to the next.
std::vector<SungWord> spread_words(const std::string& words, const std::vector<Mark>& marks,
                                   const std::vector<SungWord>& standing);

class Project;

/// Spreads the piece's words under a performance, as one edit; hand-placed ones stay. Leaves a piece without
/// words, or a performance without notes, as it is. Returns how many words stand there then.
std::size_t spread_sung_words(Project& project, PerformanceId id);

} // namespace luft::project
