#include "export/profile_html.h"

#include "base/text.h"
#include "export/page.h"
#include "export/profile_map.h"
#include "export/profile_tables.h"
#include "profile/words.h"

#include <algorithm>

namespace luft::exports {
namespace {

using profile::Profile;

std::string paragraph(std::string_view text) {
    return "<p>" + prose(text) + "</p>\n";
}

std::string time_mark(Seconds t) {
    return "<span class=\"time\">" + clock_text(t) + "</span>";
}

std::string badge(const char* words) {
    return " <span class=\"badge\">" + std::string(words) + "</span>";
}

std::string finding_list(const char* title, const std::vector<profile::Finding>& findings, const char* none) {
    std::string out = "<section class=\"card\">\n<h2>" + std::string(title) + "</h2>\n";
    if (findings.empty()) return out + element("p", "quiet", none) + "</section>\n";
    out += "<ul>\n";
    for (const auto& f : findings) {
        out += "<li>" + prose(f.words);
        if (f.coach)
            out += badge("coach");
        else if (f.hint)
            out += badge("hint");
        else if (!f.examples.empty() && f.drill.empty())
            out += " <span class=\"quiet unit\">Hear " + time_mark(f.examples.front().span.start) + "</span>";
        out += "</li>\n";
    }
    return out + "</ul>\n</section>\n";
}

std::string example(const char* title, const std::optional<profile::Example>& e) {
    if (!e) return {};
    const bool ended =
        !e->words.empty() && std::string_view(".!?").find(e->words.back()) != std::string_view::npos;
    return "<p class=\"hear\"><b>" + std::string(title) + "</b> " + time_mark(e->span.start) + " " +
           safe(e->words) + (ended ? "</p>\n" : ".</p>\n");
}

std::string basis_words(vocabulary::Basis basis) {
    return basis == vocabulary::Basis::measured ? "measured"
           : basis == vocabulary::Basis::hint   ? "a hint only"
                                                : "the coach's judgement";
}

std::string facet_section(const profile::FacetProfile& f, bool divided) {
    std::string out = "<section class=\"facet\">\n<div class=\"keep\">\n<h3>" + safe(f.name) +
                      badge(basis_words(f.basis).c_str()) + "</h3>\n";
    if (!f.summary.empty()) out += paragraph(f.summary);
    for (const auto& hint : f.hints)
        out += "<p>" + safe(hint.words) + badge("a hint only") + "</p>\n";
    out += example("Hear it", f.best) + example("Against it", f.counter) + "</div>\n";
    return out + shade_table(f, divided) + measure_table(f, divided) + "</section>\n";
}

std::string drill(const vocabulary::Drill& d) {
    std::string out =
        "<section class=\"keep\">\n" + element("h3", "", d.title) + element("p", "quiet", d.aim) + "<ol>\n";
    for (const auto& step : d.steps)
        out += element("li", "", step);
    out += "</ol>\n";
    if (!d.caution.empty()) out += element("p", "quiet", "Take care: " + d.caution);
    return out + "</section>\n";
}

std::string quarters_words(const Profile& p) {
    std::string out =
        "Q1 to Q4 are the quarters of the song, from the first to the last sung note; they begin at ";
    std::vector<std::string> starts;
    for (std::size_t q = 0; q < 4; ++q)
        starts.push_back(clock_text(p.quarters[q]));
    out += profile::listed(starts) + ".";
    if (p.range && p.range->divided)
        out += " Low, middle and high are thirds of the sung range: the middle one goes from " +
               note_name(p.range->thirds[0]) + " to " + note_name(p.range->thirds[1]) + ".";
    return out;
}

constexpr std::string_view kStyle = R"css(
.badge { font-size: 0.78rem; font-weight: 400; color: var(--soft); border: 1px solid var(--rule); border-radius: 0.7rem;
  padding: 0.02rem 0.5rem; white-space: nowrap; vertical-align: 0.08em; }
.cards { grid-template-columns: 1fr 1fr; }
.card h2 { margin: 0 0 0.4rem; font-size: 1.15rem; }
.card ul { padding-left: 1.1rem; }
@media print { .fresh { break-before: page; } .cards { margin: 0.6rem 0; gap: 0.7rem; } .card { font-size: 9.4pt; padding: 0.6rem 0.9rem; line-height: 1.42; }
  .card li { margin-bottom: 0.2rem; } .lead { font-size: 11pt; } .lead p { margin-bottom: 0.3rem; } }
.facet { border-top: 1px solid var(--rule); padding-top: 0.2rem; margin-top: 1.3rem; }
.hear { margin-bottom: 0.2rem; }
.drills { columns: 2; column-gap: 2rem; }
@media (max-width: 40rem) { .cards { grid-template-columns: 1fr; } .drills { columns: 1; } }
)css";

PageText page_text(const Profile& p) {
    PageText text;
    text.kind = "Technique profile";
    text.title = p.piece.empty() ? "Untitled" : p.piece;
    text.subtitle = p.performer;
    if (!p.label.empty())
        text.subtitle += (text.subtitle.empty() ? "Performance " : ", performance ") + p.label;
    if (!p.source.empty()) text.facts.push_back(p.source);
    if (!p.permission.empty()) text.facts.push_back("permission: " + p.permission);
    if (p.duration > Seconds(0)) text.facts.push_back(profile::length_text(p.duration));
    if (p.listening) {
        text.facts.push_back("A4 = " + fixed(p.listening->tuning.value(), 1) + " Hz");
        text.facts.push_back(p.listening->setting == voice::Setting::alone ? "voice alone"
                                                                           : "with accompaniment");
        if (p.listening->loudness.integrated)
            text.facts.push_back(fixed(p.listening->loudness.integrated->value(), 1) + " LUFS");
    }
    text.extra_css = std::string(kStyle) + std::string(table_style());
    text.cautions = cautions();
    return text;
}

} // namespace

std::string profile_html(const Profile& p, const profile::Source& source) {
    PageText text = page_text(p);
    auto& body = text.body_html;
    body += "<div class=\"lead\">\n";
    for (const auto& sentence : p.headline)
        body += paragraph(sentence);
    body += "</div>\n<div class=\"cards\">\n" +
            finding_list("Strengths", p.strengths, "Nothing stood out clearly enough to be listed.") +
            finding_list("To watch", p.watch, "Nothing stood out clearly enough to be listed.") + "</div>\n";
    if (!p.practise.empty()) body += finding_list("To practise", p.practise, "");
    if (const auto map = phrase_map(source); !map.html.empty())
        body += "<h2>The song at a glance</h2>\n" + map.html;
    const bool divided = p.range && p.range->divided;
    if (!p.facets.empty()) {
        body += "<h2 class=\"fresh\">Facet by facet</h2>\n";
        if (p.range) body += element("p", "quiet", quarters_words(p));
        for (const auto& facet : p.facets)
            body += facet_section(facet, divided);
    }
    if (!p.drills.empty()) {
        body += "<h2>The drills</h2>\n<div class=\"drills\">\n";
        for (const auto& d : p.drills)
            body += drill(d);
        body += "</div>\n";
    }
    return page(text);
}

} // namespace luft::exports
