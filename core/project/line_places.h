// Sung lines onto phrases.
#pragma once

#include <optional>
#include <vector>

namespace luft::project {

/// How much there is to sing in a line, and the phrase it is tied to, if any.
struct LineSize {
    int notes = 1;                                    ///< that its syllables ask for
    std::optional<std::size_t> first_tied, last_tied; ///< phrases that hold words placed by the coach
};

/// Lines that are sung on phrases together; both counts are at least 1.
struct LineBlock {
    std::size_t line = 0, lines = 1;
    std::size_t phrase = 0, phrases = 1;
};

/// Lines go to phrases in order, and none is lost. `notes` has one count a phrase, each at least 1; empty
/// result without lines or phrases. A phrase may stay empty; lines may share a phrase when there is no breath
/// between them, and a line may go over several phrases when there is a breath in it (up to three of each;
/// where lines are many against phrases, up to twice as many as fall to one, and two). Of all ways the one
/// that costs least:
///   - what a block's notes and its lines ask for differ by, squared, over the sum of both; half of that for
///     more notes, which ornaments and melismas explain;
///   - 2.5 for each line or phrase more than one in a block;
///   - 2 for each run of phrases that stay empty, and 0.15 for each of their notes: when the words are sung
///     twice and typed once, the second time stays empty rather than wrong;
///   - 100 for each line that doesn't get the phrases it is tied to.
/// Of two ways that cost the same, the one that leaves later phrases empty. The costs were chosen on made-up
/// songs; there is no source.
std::vector<LineBlock> places_on_phrases(const std::vector<LineSize>& lines, const std::vector<int>& notes);

} // namespace luft::project
