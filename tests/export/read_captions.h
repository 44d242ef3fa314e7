// Captions as FFmpeg's own demuxers and decoders read them.
#pragma once

#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <sstream>
#include <string>
#include <vector>

namespace luft::exports::testing {

/// A caption as FFmpeg understood it.
struct ReadCaption {
    double start = 0, end = 0;
    std::string text;
};

inline double seconds_of(const std::string& srt_time) { // HH:MM:SS,mmm
    return 3600 * std::stod(srt_time.substr(0, 2)) + 60 * std::stod(srt_time.substr(3, 2)) +
           std::stod(srt_time.substr(6, 2)) + std::stod(srt_time.substr(9, 3)) / 1000;
}

/// Cues as ffmpeg understood them, which it writes as SubRip: number, times, lines, empty line.
inline std::vector<ReadCaption> read_back(const std::string& captions, const std::string& ending) {
    const test::Folder folder;
    const auto file = folder / ("captions." + ending);
    test::write_all(file, captions);
    std::string srt = test::run("ffmpeg -nostdin -v error -i " + test::quoted(file) + " -f srt -");
    std::erase(srt, '\r'); // it ends lines inside a cue with CR LF
    std::istringstream in(srt);
    std::vector<ReadCaption> out;
    std::string line;
    while (std::getline(in, line)) {
        if (line.empty()) continue;
        ReadCaption cue;
        REQUIRE(std::getline(in, line));
        REQUIRE(line.size() == 29);
        cue.start = seconds_of(line.substr(0, 12));
        cue.end = seconds_of(line.substr(17));
        while (std::getline(in, line) && !line.empty())
            cue.text += (cue.text.empty() ? "" : "\n") + line;
        out.push_back(cue);
    }
    return out;
}

} // namespace luft::exports::testing
