#include "export/compare_html.h"

#include "base/text.h"
#include "export/compare_words.h"
#include "export/inline_svg.h"
#include "export/page.h"
#include "export/pair_pictures.h"
#include "export/tempo_curve.h"

#include <cmath>

namespace luft::exports {
namespace {

using compare::Comparison;

constexpr std::string_view kStyle = R"css(
.cards { grid-template-columns: 1fr 1fr; }
.card h2 { margin: 0 0 0.3rem; font-size: 1.15rem; overflow-wrap: anywhere; }
.card p { margin: 0; font-size: 0.92rem; overflow-wrap: anywhere; }
.first { list-style: none; padding: 0; margin: 0.4rem 0 0.8rem; counter-reset: point; }
.first li { counter-increment: point; position: relative; padding-left: 2rem; margin-bottom: 0.7rem; break-inside: avoid; }
.first li::before { content: counter(point); position: absolute; left: 0; top: -0.12rem; font-size: 1.35rem;
  color: var(--soft); font-variant-numeric: lining-nums; }
.first .hear { display: block; font-size: 0.9rem; color: var(--soft); }
.first b { font-weight: 600; color: var(--ink); }
.all td { padding-top: 0.22rem; padding-bottom: 0.22rem; }
.all .says { padding-left: 0.6rem; }
.pairs { width: auto; min-width: 60%; }
@media print { .fresh { break-before: page; } .lead { font-size: 11pt; } .lead p { margin-bottom: 0.3rem; }
  .cards { margin: 0.6rem 0; gap: 0.7rem; } .card { font-size: 9.4pt; padding: 0.6rem 0.9rem; line-height: 1.42; }
  .all { font-size: 8.6pt; } }
@media (max-width: 40rem) { .cards { grid-template-columns: 1fr; } }
)css";

std::string card(const Portrait& portrait) {
    std::string out = "<section class=\"card\">\n" + element("h2", "", portrait.label);
    for (const auto& line : portrait.lines)
        out += "<p>" + prose(line) + "</p>\n";
    return out + "</section>\n";
}

std::string to_speak_of(const Comparison& c, const PairPictures& pairs) {
    std::string out = "<h2>To speak of first</h2>\n";
    const auto points = talk_points(c);
    if (points.empty()) return out + element("p", "quiet", nothing_differs());
    out += "<ol class=\"first\">\n";
    for (const TalkPoint& point : points) {
        const auto number = pairs.number_of(point.difference);
        out += "<li>" + prose(point.words) + " <span class=\"hear\">" +
               (point.hear.empty() ? "" : "<b>" + prose(point.hear) + "</b> \xC2\xB7 ") + prose(point.sure) +
               (number ? " \xC2\xB7 no.\xC2\xA0" + std::to_string(*number) + " in the table" : "") +
               "</span></li>\n";
    }
    return out + "</ol>\n";
}

std::string pictures(const Comparison& c, const PairPictures& pairs) {
    std::string out;
    for (const std::size_t row : pairs.telling()) {
        sheet::Canvas canvas = sheet::Canvas::svg(pairs.width(), std::ceil(pairs.height(row)));
        pairs.draw(canvas, row, sheet::light_colours().paper);
        out += "<figure>\n" +
               inline_svg(canvas.take_svg(), "p" + std::to_string(row) + "-", "Drawn: " + pairs.words(row)) +
               "\n</figure>\n";
    }
    if (out.empty()) return out;
    return "<h2 class=\"fresh\">Where they differ most</h2>\n" +
           element("p", "quiet", pair_pictures_words(c)) + out;
}

std::string phrases(const Comparison& c) {
    std::string out = "<h2>Phrase against phrase</h2>\n<table class=\"pairs\">\n<thead><tr><th>" +
                      safe(c.a.label) + "</th><th>" + safe(c.b.label) + "</th></tr></thead>\n<tbody>\n";
    for (const auto& line : phrase_lines(c))
        out += "<tr><td class=\"time\">" + safe(line.a) + "</td><td class=\"time\">" + safe(line.b) +
               "</td></tr>\n";
    out += "</tbody></table>\n" + element("p", "quiet", "Notes: " + notes_words(c) + ".");
    for (const auto& line : gaps_words(c))
        out += "<p>" + prose(line) + ".</p>\n";
    return out;
}

std::string place(const std::optional<Span>& span) {
    return "<td class=\"num\">" + (span ? clock_text(span->start) : std::string("whole")) + "</td>";
}

std::string all_differences(const Comparison& c, const PairPictures& pairs) {
    if (c.differences.empty()) return {};
    std::string out =
        "<h2>Every difference</h2>\n<table class=\"all\">\n<thead><tr><th></th><th class=\"num\">" +
        safe(c.a.label) + "</th><th class=\"num\">" + safe(c.b.label) +
        "</th><th class=\"says\">What differs</th><th class=\"num\">Size</th>"
        "<th class=\"num\">Error</th><th class=\"num\">Sure</th></tr></thead>\n<tbody>\n";
    for (std::size_t i = 0; i < c.differences.size(); ++i) {
        const auto& d = c.differences[i];
        const auto number = pairs.number_of(i);
        out += "<tr><td class=\"quiet\">" + (number ? std::to_string(*number) : std::string()) + "</td>" +
               place(d.a) + place(d.b) + "<td class=\"says\">" + prose(d.sentence) +
               "</td><td class=\"num\">" + safe(size_words(d)) + "</td><td class=\"num\">" +
               safe(expected_words(d)) + "</td><td class=\"num\">" + safe(sure_words(d)) + "</td></tr>\n";
    }
    return out + "</tbody></table>\n" + element("p", "quiet", table_words(c));
}

PageText page_text(const Comparison& c) {
    PageText text;
    text.kind = "Two performances";
    text.title = c.piece.title.empty() ? "Untitled" : c.piece.title;
    text.subtitle = c.b.label + " against " + c.a.label;
    if (!c.piece.writer.empty()) text.facts.push_back("written by " + c.piece.writer);
    text.extra_css = std::string(kStyle);
    text.cautions = cautions();
    return text;
}

} // namespace

std::string compare_html(const Comparison& c, const profile::Source& a, const profile::Source& b) {
    PageText text = page_text(c);
    auto& body = text.body_html;
    body += "<div class=\"lead\">\n";
    for (const auto& sentence : lead_words(c))
        body += "<p>" + prose(sentence) + "</p>\n";
    body += "</div>\n<div class=\"cards\">\n" + card(portrait(c.a, c.side_a)) +
            card(portrait(c.b, c.side_b)) + "</div>\n";
    if (c.alignment.stretches.empty()) return page(text);
    const PairPictures pairs(c, a, b, kPairWidth);
    body += to_speak_of(c, pairs) + element("p", "quiet", talk_caution());
    const std::string drawn = pictures(c, pairs);
    body += drawn;
    if (const auto curve = tempo_curve(c); !curve.empty())
        body += std::string("<h2") + (drawn.empty() ? " class=\"fresh\"" : "") +
                ">Tempo along the song</h2>\n" + curve;
    body += phrases(c) + all_differences(c, pairs);
    return page(text);
}

} // namespace luft::exports
