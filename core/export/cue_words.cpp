#include "export/cue_words.h"

#include "base/text.h"
#include "export/cue_time.h"
#include "script/others.h"
#include "script/title.h"

namespace luft::exports {

std::string length_words(Rational length) {
    const Seconds s = seconds(length);
    return s < Seconds(60) ? fixed(s.value(), 1) + " s" : clock_text(s);
}

namespace {

constexpr std::size_t kShortLabel = 12; ///< characters that a column of times has room for

/// What is quoted of other performances, all in one.
Figure others_figure(const script::Source& source, const script::CueSheet& sheet) {
    Rational all;
    std::string shares;
    for (const auto& quoted : sheet.others) {
        const auto& other = script::other_of(source, quoted.performance)->performance;
        all += quoted.quoted_once;
        shares += (shares.empty() ? "" : ", ") + fixed(100 * quoted.quoted_share, 0) + " % of " +
                  script::one_line(other.label);
    }
    return {"To compare", clock_text(seconds(all)), shares};
}

} // namespace

std::vector<Figure> cue_figures(const script::Source& source, const script::CueSheet& sheet) {
    const std::string again = sheet.quoted == sheet.quoted_once
                                  ? ""
                                  : "; " + length_words(sheet.quoted) + " of playing with repeats";
    std::vector<Figure> figures = {
        {"Running time", clock_text(seconds(sheet.running_time)),
         programme_timecode(sheet, sheet.running_time)},
        {"You speak", clock_text(seconds(sheet.talk_time)),
         sheet.asides.empty() ? "while the picture stands" : "while the picture stands; asides not counted"},
        {"Quoted", clock_text(seconds(sheet.quoted_once)),
         fixed(100 * sheet.quoted_share, 0) + " % of the recording" + again},
        {"Longest quote", length_words(sheet.longest_quote), "without a spoken word"}};
    if (!sheet.others.empty()) figures.insert(figures.begin() + 3, others_figure(source, sheet));
    return figures;
}

std::string talk_heading(const script::Segment& talk) {
    std::string heading = talk.title;
    if (talk.stop_number == 0) return heading;
    const std::string start = "Stop " + std::to_string(talk.stop_number);
    if (heading.starts_with(start + ": ")) heading.erase(0, start.size() + 2);
    if (heading.starts_with(start)) heading = "Stop";
    return heading;
}

std::string music_words(const script::CueSheet& sheet, const script::Segment& music) {
    if (music.kind != script::SegmentKind::play) return music.title;
    std::string plays = "The recording plays";
    const auto next = static_cast<std::size_t>(&music - sheet.segments.data()) + 1;
    if (next == sheet.segments.size()) return plays + " to the end";
    const script::Segment& n = sheet.segments[next];
    if (n.kind != script::SegmentKind::talk) return plays;
    return plays +
           (n.stop_number > 0 ? " and halts for stop " + std::to_string(n.stop_number) : " to the closing");
}

std::string media_place(const script::Source& source, const script::Segment& segment) {
    const std::string at = clock_text(seconds(segment.media_start));
    return segment.other
               ? script::one_line(script::performance_of(source, segment).label, kShortLabel) + " " + at
               : at;
}

std::vector<Credit> credits(const script::Source& source, const script::CueSheet& sheet) {
    const auto& p = source.performance;
    const auto or_else = [](const std::string& text, const char* otherwise) {
        return text.empty() ? otherwise : text;
    };
    constexpr const char* kNoPermission = "none noted. Settle this before the programme is published.";
    std::vector<Credit> out = {{"Piece", or_else(source.piece.title, "not noted")},
                               {"Written by", or_else(source.piece.writer, "not noted")},
                               {"Performed by", or_else(p.performer, "not noted")},
                               {"Recording", or_else(p.source, "source not noted")},
                               {"Permission", or_else(p.permission, kNoPermission)}};
    for (const auto& quoted : sheet.others) {
        const auto& other = script::other_of(source, quoted.performance)->performance;
        out.push_back({"Compared with", script::performance_name(other)});
        out.push_back({"Its recording", or_else(other.source, "source not noted")});
        out.push_back({"Its permission", or_else(other.permission, kNoPermission)});
    }
    return out;
}

std::vector<std::string> cue_facts(const script::Source& source, const script::CueSheet& sheet) {
    return {"recording of " + clock_text(source.performance.facts.duration),
            "talk at " + fixed(source.settings.words_per_minute, 0) +
                " words a minute where it wasn't rehearsed",
            rate_words(sheet)};
}

std::string title_of(const project::Piece& piece) {
    return piece.title.empty() ? "Untitled piece" : piece.title;
}

} // namespace luft::exports
