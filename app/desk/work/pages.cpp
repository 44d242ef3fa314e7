#include "desk/work/pages.h"

#include "base/text.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>

namespace luft::desk {
namespace {

std::string link(const profile::Example& example) {
    return "<a href=\"span:" + fixed(example.span.start.value(), 3) + "-" +
           fixed(example.span.end.value(), 3) + "\">" + clock_text(example.span.start) + "</a> " +
           escape_markup(example.words);
}

std::string coloured(const std::string& words, sheet::Colour colour) {
    return "<font color=\"" + hex(colour) + "\">" + words + "</font>";
}

std::string list(const std::string& heading, const std::vector<profile::Finding>& findings,
                 sheet::Colour colour, sheet::Colour soft) {
    if (findings.empty()) return {};
    std::string html = "<h3>" + coloured(heading, colour) + "</h3>\n<ul>\n";
    for (const auto& finding : findings) {
        html += "<li>" + escape_markup(finding.words);
        if (finding.hint) html += coloured(" (only a hint)", soft);
        if (finding.coach) html += coloured(" (your judgement)", soft);
        for (const auto& example : finding.examples)
            html += "<br>" + link(example);
        html += "</li>\n";
    }
    return html + "</ul>\n";
}

std::string measure_text(const profile::Measure& m) {
    std::string text =
        escape_markup(m.name) + ": <b>" + fixed(m.median, m.digits) + " " + escape_markup(m.unit) + "</b>";
    if (m.count > 1)
        text += " (most between " + fixed(m.low, m.digits) + " and " + fixed(m.high, m.digits) + "; " +
                std::to_string(m.count) + " values)";
    return text;
}

std::string facet_html(const profile::FacetProfile& facet, const sheet::Colours& c) {
    std::string html =
        "<h3>" + escape_markup(facet.name) + "</h3>\n<p>" + escape_markup(facet.summary) + "</p>\n";
    if (!facet.shades.empty()) {
        html += "<table cellpadding=\"3\">\n";
        for (const auto& shade : facet.shades) {
            html += "<tr><td>" + escape_markup(shade.name) + "</td><td align=\"right\" nowrap>" +
                    fixed(shade.share * 100, 0) + " %</td><td nowrap>" +
                    coloured(escape_markup(shade.of), c.soft) + "</td><td>" +
                    (shade.best ? link(*shade.best) : "") + "</td></tr>\n";
        }
        html += "</table>\n";
    }
    for (const auto& m : facet.measures)
        html += "<p>" + measure_text(m) + "</p>\n";
    for (const auto& hint : facet.hints)
        html += "<p>" + coloured(escape_markup(hint.words), c.soft) + "</p>\n";
    if (facet.best) html += "<p>Best heard at " + link(*facet.best) + "</p>\n";
    if (facet.counter) html += "<p>Against it, " + link(*facet.counter) + "</p>\n";
    return html;
}

} // namespace

std::string hex(sheet::Colour colour) {
    std::array<char, 8> text{};
    std::snprintf(text.data(), text.size(), "#%02x%02x%02x", unsigned{colour.red}, unsigned{colour.green},
                  unsigned{colour.blue});
    return text.data();
}

std::string profile_page(const profile::Profile& profile, const sheet::Colours& c) {
    std::string html =
        "<html><body bgcolor=\"" + hex(c.paper) + "\" text=\"" + hex(c.ink) + "\" link=\"" + hex(c.chest) +
        "\">\n<h1>" + escape_markup(profile.piece) + "</h1>\n<p>" +
        escape_markup(profile.performer.empty() ? "Performance " + profile.label : profile.performer) +
        "</p>\n";
    if (profile.notes == 0)
        return html + "<p>Nothing to sum up yet: no note is marked in this performance.</p></body></html>";
    html += "<p>";
    for (const auto& sentence : profile.headline)
        html += escape_markup(sentence) + " ";
    html += "</p>\n<table width=\"100%\" cellpadding=\"8\"><tr><td valign=\"top\" width=\"36%\" bgcolor=\"" +
            hex(c.card) + "\">\n";
    html += list("Strengths", profile.strengths, c.strength, c.soft);
    html += list("Watch", profile.watch, c.watch, c.soft);
    html += list("Practise", profile.practise, c.ink, c.soft);
    html += "</td><td valign=\"top\">\n";
    for (const auto& facet : profile.facets)
        html += facet_html(facet, c);
    if (profile.left_out > 0)
        html += "<p>" +
                coloured(std::to_string(profile.left_out) + " proposals too unsure to count are left out.",
                         c.soft) +
                "</p>\n";
    html += "</td></tr></table>\n<p>" +
            coloured("Estimated from sound; diagnoses nothing. Larynx, posture and nasality are the coach's "
                     "own judgement.",
                     c.soft) +
            "</p></body></html>";
    return html;
}

std::optional<Span> linked_span(std::string_view link) {
    constexpr std::string_view kScheme = "span:";
    if (!link.starts_with(kScheme)) return std::nullopt;
    link.remove_prefix(kScheme.size());
    double from = 0, to = 0;
    const auto first = std::from_chars(link.data(), link.data() + link.size(), from);
    if (first.ec != std::errc() || first.ptr == link.data() + link.size() || *first.ptr != '-')
        return std::nullopt;
    const auto second = std::from_chars(first.ptr + 1, link.data() + link.size(), to);
    if (second.ec != std::errc() || second.ptr != link.data() + link.size() || to < from) return std::nullopt;
    return Span{Seconds(from), Seconds(to)};
}

} // namespace luft::desk
