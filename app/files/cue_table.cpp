#include "files/cue_table.h"

#include "base/text.h"
#include "export/plain_text.h"
#include "script/others.h"

#include <algorithm>

namespace luft::files {
namespace {

using exports::one_line;
using exports::paragraph;

constexpr int kIndent = 10;

std::string clock_of(Rational time) {
    return clock_text(seconds(time));
}

std::string padded(const std::string& text) {
    constexpr std::size_t kWide = 8; // "12:34.5" and from an hour on a little more
    return text.size() < kWide ? std::string(kWide - text.size(), ' ') + text : text;
}

std::string segment_text(const script::Segment& segment) {
    std::string text = padded(clock_of(segment.programme_start)) + "  ";
    const std::string length = fixed((segment.programme_end - segment.programme_start).as_double(), 1) + " s";
    switch (segment.kind) {
    case script::SegmentKind::talk:
        return text + one_line(segment.title) + " (" + length + " of talk, halted at " +
               clock_of(segment.media_start) + ")\n" + paragraph(segment.text, kIndent);
    case script::SegmentKind::quote:
        return text + one_line(segment.title) + ", " + clock_of(segment.media_start) + "-" +
               clock_of(segment.media_end) + " (" + length + ")\n";
    case script::SegmentKind::replay:
        return text + "Again " + clock_of(segment.media_start) + "-" + clock_of(segment.media_end) + " at " +
               fixed(100 * segment.speed.as_double(), 0) + " % speed (" + length + ")\n";
    case script::SegmentKind::play:
        break;
    }
    return text + "Play " + clock_of(segment.media_start) + "-" + clock_of(segment.media_end) + " (" +
           length + ")\n";
}

std::string aside_text(const script::AsideCue& aside) {
    return padded(clock_of(aside.programme_start)) + "  Aside over the music, from " +
           clock_text(aside.media_start) + "\n" + paragraph(aside.text, kIndent);
}

std::string warnings_text(const std::vector<script::Warning>& warnings) {
    std::string text = warnings.empty() ? "" : "\nTo look at:\n";
    for (const script::Warning& warning : warnings) {
        std::string words = one_line(warning.words);
        if (warning.remedy) words += " It would fit at " + clock_text(*warning.remedy) + ".";
        text += paragraph("- " + words, 2);
    }
    return text;
}

} // namespace

std::string cue_figures(const script::Source& source, const script::CueSheet& sheet) {
    std::string text = "Running time  " + clock_of(sheet.running_time) + ", of it talk " +
                       clock_of(sheet.talk_time) + "\nQuoted        " + clock_of(sheet.quoted) +
                       ", replays included; " + fixed(100 * sheet.quoted_share, 0) +
                       " % of the recording is heard\nLongest quote " +
                       fixed(sheet.longest_quote.as_double(), 1) + " s without a spoken word\n";
    for (const script::QuotedOther& other : sheet.others)
        text += "Compared with " +
                one_line(script::performance_name(script::other_of(source, other.performance)->performance)) +
                ": " + clock_of(other.quoted) + ", " + fixed(100 * other.quoted_share, 0) +
                " % of that recording is heard, at most " + fixed(other.longest_quote.as_double(), 1) +
                " s without a spoken word\n";
    return text;
}

std::string cue_table(const script::Source& source, const script::CueSheet& sheet) {
    std::string text = one_line(source.piece.title) + ", performance " + one_line(source.performance.label);
    if (!source.performance.performer.empty()) text += " (" + one_line(source.performance.performer) + ")";
    text += "\n" + cue_figures(source, sheet) + "\n";
    auto aside = sheet.asides.begin();
    for (const script::Segment& segment : sheet.segments) {
        text += segment_text(segment);
        // Asides lie inside the stretch that has just been named.
        for (; aside != sheet.asides.end() && aside->programme_start < segment.programme_end; ++aside)
            text += aside_text(*aside);
    }
    return text + warnings_text(sheet.warnings);
}

} // namespace luft::files
