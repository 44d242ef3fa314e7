#include "export/webvtt.h"

#include "base/text.h"
#include "export/captions.h"

#include <cstdint>

namespace luft::exports {
namespace {

/// WebVTT escapes these three; quotes stand for themselves.
std::string cue_text(const std::string& line) {
    std::string out;
    for (const char c : line)
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        default:
            out += c;
        }
    return out;
}

} // namespace

std::string webvtt(const script::CueSheet& sheet) {
    std::string out = "WEBVTT\n";
    int number = 0;
    const auto at = [](std::int64_t ms) { return timestamp(Seconds(static_cast<double>(ms) / 1000)); };
    for (const WholeCaption& c : whole_captions(sheet)) {
        out += "\n" + std::to_string(++number) + "\n" + at(c.start_ms) + " --> " + at(c.end_ms) + "\n";
        for (const auto& line : c.lines)
            out += cue_text(line) + "\n";
    }
    return out;
}

} // namespace luft::exports
