#include "export/subrip.h"

#include "base/text.h"
#include "export/captions.h"

#include <string_view>

namespace luft::exports {
namespace {

constexpr std::string_view kWordJoiner = "\xE2\x81\xA0";

/// The line with signs broken up that a reader would take for markup or for times.
std::string caption_text(const std::string& line) {
    std::string out;
    for (std::size_t i = 0; i < line.size(); ++i) {
        if (line[i] == '>' && i >= 2 && line[i - 1] == '-' && line[i - 2] == '-') out += kWordJoiner;
        out += line[i];
        if (line[i] == '<' || line[i] == '{' || line[i] == '\\') out += kWordJoiner;
    }
    return out;
}

std::string srt_time(std::int64_t ms) {
    std::string time = timestamp(Seconds(static_cast<double>(ms) / 1000));
    time[time.size() - 4] = ',';
    return time;
}

} // namespace

std::string subrip(const script::CueSheet& sheet) {
    std::string out;
    int number = 0;
    for (const WholeCaption& c : whole_captions(sheet)) {
        out +=
            std::to_string(++number) + "\r\n" + srt_time(c.start_ms) + " --> " + srt_time(c.end_ms) + "\r\n";
        for (const auto& line : c.lines)
            out += caption_text(line) + "\r\n";
        out += "\r\n";
    }
    return out;
}

} // namespace luft::exports
