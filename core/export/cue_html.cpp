#include "export/cue_html.h"

#include "base/text.h"
#include "export/cue_rows.h"
#include "export/cue_strip.h"
#include "export/cue_style.h"
#include "export/cue_time.h"
#include "export/page.h"

namespace luft::exports {
namespace {

const char* const kPlaySign = "<svg class=\"sign\" viewBox=\"0 0 18 16\" aria-hidden=\"true\">"
                              "<path class=\"solid\" d=\"M3 1l13 7-13 7z\"/></svg>";
const char* const kAgainSign = "<svg class=\"sign\" viewBox=\"0 0 18 16\" aria-hidden=\"true\">"
                               "<path class=\"line\" d=\"M14.5 5a6.2 6.2 0 1 0 .3 5M15 1v4.4h-4.4\"/></svg>";
const char* const kWarningSign = "<svg viewBox=\"0 0 22 20\" aria-hidden=\"true\">"
                                 "<path class=\"sign\" d=\"M11 2l9.5 16.5h-19zM11 8v5M11 15.8v.2\"/></svg>";

std::string length_words(Rational length) {
    const Seconds s = seconds(length);
    return s < Seconds(60) ? fixed(s.value(), 1) + " s" : clock_text(s);
}

std::string figure(const std::string& name, const std::string& value, const std::string& note) {
    return "<div><dt>" + safe(name) + "</dt><dd class=\"big\">" + safe(value) + "</dd><dd class=\"quiet\">" +
           safe(note) + "</dd></div>\n";
}

std::string figures(const script::CueSheet& sheet) {
    const std::string again = sheet.quoted == sheet.quoted_once
                                  ? ""
                                  : "; " + length_words(sheet.quoted) + " of playing with repeats";
    return "<dl class=\"figures\">\n" +
           figure("Running time", clock_text(seconds(sheet.running_time)),
                  programme_timecode(sheet, sheet.running_time)) +
           figure("You speak", clock_text(seconds(sheet.talk_time)),
                  sheet.asides.empty() ? "while the picture stands"
                                       : "while the picture stands; asides not counted") +
           figure("Quoted", clock_text(seconds(sheet.quoted_once)),
                  fixed(100 * sheet.quoted_share, 0) + " % of the recording" + again) +
           figure("Longest quote", length_words(sheet.longest_quote), "without a spoken word") + "</dl>\n";
}

std::string warnings(const script::CueSheet& sheet) {
    if (sheet.warnings.empty()) return "<p class=\"quiet\">Nothing to mend: no warnings.</p>\n";
    std::string out =
        std::string("<section class=\"warnings\">\n<h2>") + kWarningSign + "Before you record</h2>\n<ul>\n";
    for (const auto& w : sheet.warnings)
        out += element("li", "", w.words);
    return out + "</ul>\n</section>\n";
}

std::string times(const std::string& programme, Rational length, const std::string& media,
                  const std::string& note) {
    return "<td class=\"time at\">" + programme + "<span class=\"small\">" + length_words(length) +
           "</span></td><td class=\"time\">" + media + "<span class=\"small\">" + note + "</span></td>";
}

std::string words(const std::string& text) {
    if (count_words(text) == 0) return "<p class=\"words missing\">no words yet</p>";
    return "<p class=\"words\" dir=\"auto\">" + safe(text) + "</p>";
}

std::string talk_row(const script::CueSheet& sheet, const script::Segment& s) {
    std::string heading = s.title;
    std::string mark;
    if (s.stop_number > 0) { // the number stands in its own disc
        mark = "<span class=\"mark\">" + std::to_string(s.stop_number) + "</span>";
        const std::string start = "Stop " + std::to_string(s.stop_number);
        if (heading.starts_with(start + ": ")) heading.erase(0, start.size() + 2);
        if (heading.starts_with(start)) heading = "Stop";
    }
    return "<tr class=\"talk\">" +
           times(programme_timecode(sheet, s.programme_start), s.programme_end - s.programme_start,
                 clock_text(seconds(s.media_start)), "stands") +
           "<td><h3>" + mark + "<bdi>" + safe(heading) + "</bdi></h3>" + words(s.text) + "</td></tr>\n";
}

/// What the music runs into: "and halts for stop 2", "to the end"; empty where a replay or more music
/// follows.
std::string until(const script::CueSheet& sheet, const script::Segment& s) {
    const auto next = static_cast<std::size_t>(&s - sheet.segments.data()) + 1;
    if (next == sheet.segments.size()) return " to the end";
    const script::Segment& n = sheet.segments[next];
    if (n.kind != script::SegmentKind::talk) return {};
    return n.stop_number > 0 ? " and halts for stop " + std::to_string(n.stop_number) : " to the closing";
}

std::string music_row(const script::CueSheet& sheet, const script::Segment& s) {
    const bool again = s.kind == script::SegmentKind::replay;
    const std::string to = clock_text(seconds(s.media_end));
    return std::string("<tr class=\"") + (again ? "replay" : "play") + "\">" +
           times(programme_timecode(sheet, s.programme_start), s.programme_end - s.programme_start,
                 clock_text(seconds(s.media_start)), "to " + to) +
           "<td>" + (again ? kAgainSign : kPlaySign) +
           safe(again ? s.title : "The recording plays" + until(sheet, s)) + "</td></tr>\n";
}

std::string aside_row(const script::CueSheet& sheet, const script::AsideCue& a) {
    return "<tr class=\"aside\">" +
           times(programme_timecode(sheet, a.programme_start), a.programme_end - a.programme_start,
                 clock_text(a.media_start), "goes on") +
           "<td><h3>Over the music</h3>" + words(a.text) + "</td></tr>\n";
}

std::string cues(const script::CueSheet& sheet) {
    std::string out =
        "<table class=\"cues\">\n<thead><tr><th>Programme</th><th>Recording</th><th>Cue</th></tr></thead>\n"
        "<tbody>\n";
    for (const CueRow& row : cue_rows(sheet)) {
        if (row.aside)
            out += aside_row(sheet, *row.aside);
        else if (row.segment->kind == script::SegmentKind::talk)
            out += talk_row(sheet, *row.segment);
        else
            out += music_row(sheet, *row.segment);
    }
    return out + "<tr class=\"end\"><td class=\"time at\">" + programme_timecode(sheet, sheet.running_time) +
           "</td><td></td><td>End of the programme</td></tr>\n</tbody>\n</table>\n";
}

std::string credits(const script::Source& source) {
    const auto& p = source.performance;
    std::string out = "<section class=\"credits keep\">\n<h2>Credits and permission</h2>\n<dl>\n";
    const auto line = [&](const std::string& name, const std::string& text, const std::string& otherwise) {
        out +=
            element("dt", "", name) + "<dd><bdi>" + safe(text.empty() ? otherwise : text) + "</bdi></dd>\n";
    };
    line("Piece", source.piece.title, "not noted");
    line("Written by", source.piece.writer, "not noted");
    line("Performed by", p.performer, "not noted");
    line("Recording", p.source, "source not noted");
    line("Permission", p.permission, "none noted. Settle this before the programme is published.");
    return out + "</dl>\n</section>\n";
}

} // namespace

std::string cue_html(const script::Source& source, const script::CueSheet& sheet) {
    PageText page_text;
    page_text.kind = "Cue sheet";
    page_text.title = source.piece.title.empty() ? "Untitled piece" : source.piece.title;
    if (!source.performance.performer.empty()) page_text.subtitle = "sung by " + source.performance.performer;
    page_text.facts = {"recording of " + clock_text(source.performance.facts.duration),
                       "talk at " + fixed(source.settings.words_per_minute, 0) +
                           " words a minute where it wasn't rehearsed",
                       rate_words(sheet)};
    page_text.body_html = figures(sheet) + cue_strip(sheet) + warnings(sheet) + cues(sheet) + credits(source);
    page_text.extra_css = kCueStyle;
    page_text.cautions = cautions();
    return page(page_text);
}

} // namespace luft::exports
