#include "export/cue_html.h"

#include "base/text.h"
#include "export/cue_rows.h"
#include "export/cue_strip.h"
#include "export/cue_style.h"
#include "export/cue_time.h"
#include "export/cue_words.h"
#include "export/page.h"

namespace luft::exports {
namespace {

const char* const kPlaySign = "<svg class=\"sign\" viewBox=\"0 0 18 16\" aria-hidden=\"true\">"
                              "<path class=\"solid\" d=\"M3 1l13 7-13 7z\"/></svg>";
const char* const kAgainSign = "<svg class=\"sign\" viewBox=\"0 0 18 16\" aria-hidden=\"true\">"
                               "<path class=\"line\" d=\"M14.5 5a6.2 6.2 0 1 0 .3 5M15 1v4.4h-4.4\"/></svg>";
const char* const kOtherSign =
    "<svg class=\"sign\" viewBox=\"0 0 18 16\" aria-hidden=\"true\">"
    "<path class=\"other\" d=\"M2 2.5h14M2 2.5v11M2 13.5h14M16 2.5v11M7 5l5 3-5 3z\"/></svg>";
const char* const kWarningSign = "<svg viewBox=\"0 0 22 20\" aria-hidden=\"true\">"
                                 "<path class=\"sign\" d=\"M11 2l9.5 16.5h-19zM11 8v5M11 15.8v.2\"/></svg>";

std::string figures(const script::Source& source, const script::CueSheet& sheet) {
    const auto all = cue_figures(source, sheet);
    std::string out = all.size() > 4 ? "<div class=\"figures five\">\n" : "<div class=\"figures\">\n";
    for (const Figure& f : all)
        out += "<div>" + element("p", "name", f.name) + element("p", "big", f.value) +
               element("p", "quiet", f.note) + "</div>\n";
    return out + "</div>\n";
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
    std::string mark; // the number stands in its own disc
    if (s.stop_number > 0) mark = "<span class=\"mark\">" + std::to_string(s.stop_number) + "</span>";
    return "<tr class=\"talk\">" +
           times(programme_timecode(sheet, s.programme_start), s.programme_end - s.programme_start,
                 clock_text(seconds(s.media_start)), "stands") +
           "<td><h3>" + mark + "<bdi>" + safe(talk_heading(s)) + "</bdi></h3>" + words(s.text) +
           "</td></tr>\n";
}

std::string music_row(const script::Source& source, const script::CueSheet& sheet, const script::Segment& s) {
    const bool again = s.kind == script::SegmentKind::replay;
    const char* sign = s.other ? kOtherSign : again ? kAgainSign : kPlaySign;
    const std::string to = clock_text(seconds(s.media_end));
    return std::string("<tr class=\"") + std::string(kind_word({&s, nullptr})) + "\">" +
           times(programme_timecode(sheet, s.programme_start), s.programme_end - s.programme_start,
                 safe(media_place(source, s)), "to " + to) +
           "<td>" + sign + safe(music_words(sheet, s)) + "</td></tr>\n";
}

std::string aside_row(const script::CueSheet& sheet, const script::AsideCue& a) {
    return "<tr class=\"aside\">" +
           times(programme_timecode(sheet, a.programme_start), a.programme_end - a.programme_start,
                 clock_text(a.media_start), "goes on") +
           "<td><h3>Over the music</h3>" + words(a.text) + "</td></tr>\n";
}

std::string cues(const script::Source& source, const script::CueSheet& sheet) {
    std::string out =
        "<table class=\"cues\">\n<thead><tr><th>Programme</th><th>Recording</th><th>Cue</th></tr></thead>\n"
        "<tbody>\n";
    for (const CueRow& row : cue_rows(sheet)) {
        if (row.aside)
            out += aside_row(sheet, *row.aside);
        else if (row.segment->kind == script::SegmentKind::talk)
            out += talk_row(sheet, *row.segment);
        else
            out += music_row(source, sheet, *row.segment);
    }
    return out + "<tr class=\"end\"><td class=\"time at\">" + programme_timecode(sheet, sheet.running_time) +
           "</td><td></td><td>End of the programme</td></tr>\n</tbody>\n</table>\n";
}

std::string credits_section(const script::Source& source, const script::CueSheet& sheet) {
    std::string out = "<section class=\"credits keep\">\n<h2>Credits and permission</h2>\n<dl>\n";
    for (const Credit& credit : credits(source, sheet))
        out += element("dt", "", credit.name) + "<dd><bdi>" + safe(credit.text) + "</bdi></dd>\n";
    return out + "</dl>\n</section>\n";
}

} // namespace

std::string cue_html(const script::Source& source, const script::CueSheet& sheet) {
    PageText page_text;
    page_text.kind = "Cue sheet";
    page_text.title = title_of(source.piece);
    if (!source.performance.performer.empty()) page_text.subtitle = "sung by " + source.performance.performer;
    page_text.facts = cue_facts(source, sheet);
    page_text.body_html = figures(source, sheet) + cue_strip(sheet) + warnings(sheet) + cues(source, sheet) +
                          credits_section(source, sheet);
    page_text.extra_css = kCueStyle;
    page_text.cautions = cautions();
    return page(page_text);
}

} // namespace luft::exports
