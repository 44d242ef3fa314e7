// Big projects and long recordings, made up in moments.
#pragma once

#include "marks/listen.h"
#include "project/project.h"

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace luft::load {

/// What a performance is to hold. The marks are spread evenly over its length.
struct Size {
    Seconds length;
    int marks = 0;   ///< about that many: phrases of eight notes with a breath and, in every fourth, a switch
    int moments = 0; ///< one a phrase at most
    int stops = 0;   ///< of the script, at most as many as moments
    std::uint64_t seed = 1;
};

/// What the ear might say of such a performance: pitch, level and every other curve filled where a note is.
marks::Analysis analysis_of(const Size& size);

/// Moments of the coach about every other phrase or so, with remarks and shades of the default vocabulary.
std::vector<project::Moment> moments_of(const Size& size, const marks::Analysis& analysis,
                                        project::PerformanceId performance);

/// Words of that many lines, eight syllables each.
std::string words_of(int lines);

/// A project with performances of those sizes, each linked to a file of a few bytes beside it that nothing
/// can listen to, and `lines` of words spread over the first one. Four edits a performance.
project::Project make_project(const std::filesystem::path& file, const std::vector<Size>& performances,
                              int lines = 0);

/// Songs by chance, one after the other, sung alone, as a WAV file of 44.1 kHz.
void sing(const std::filesystem::path& file, Seconds at_least);

} // namespace luft::load
