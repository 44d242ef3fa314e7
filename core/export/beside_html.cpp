#include "export/beside_html.h"

#include "export/page.h"
#include "profile/beside_words.h"
#include "profile/words.h"

namespace luft::exports {
namespace {

using profile::Beside;

constexpr const char *kHigher = "\xE2\x96\xB2", *kLower = "\xE2\x96\xBC"; // triangles up and down

constexpr std::string_view kStyle = R"css(
.card h2 { margin: 0 0 0.2rem; font-size: 1.15rem; overflow-wrap: anywhere; }
.card ul { padding-left: 1.1rem; }
.beside { table-layout: fixed; font-size: 0.92rem; }
.beside th { overflow-wrap: anywhere; }
.beside td { padding-top: 0.22rem; padding-bottom: 0.22rem; }
.beside .what { width: 28%; }
.beside .facet th { color: var(--ink); font-size: 1.05rem; padding-top: 1.1rem; border-bottom: 1px solid var(--ink); }
.beside .facet { break-after: avoid; }
.beside .facet .quiet { font-weight: 400; }
.beside td .quiet { display: block; font-size: 0.8rem; line-height: 1.3; }
.beside .out { font-weight: 600; }
.beside .out .quiet { font-weight: 400; }
@media print { .cards { margin: 0.6rem 0; gap: 0.7rem; } .card { font-size: 9.4pt; padding: 0.6rem 0.9rem; line-height: 1.42; }
  .beside { font-size: 8.8pt; } .beside .facet th { font-size: 10pt; padding-top: 0.7rem; } }
@media (max-width: 40rem) { .beside { font-size: 0.8rem; } }
)css";

std::string card(const profile::BesideColumn& column) {
    std::string out = "<section class=\"card\">\n" + element("h2", "", column.label);
    std::string who = column.performer.empty() ? "" : "Sung by " + column.performer;
    if (!column.source.empty()) who += (who.empty() ? "Source: " : "; source: ") + column.source;
    if (!who.empty()) out += "<p class=\"quiet\">" + prose(who) + "</p>\n";
    if (column.stands_out.empty())
        return out + element("p", "quiet", profile::nothing_stands_out()) + "</section>\n";
    out += "<ul>\n";
    for (const auto& sentence : column.stands_out)
        out += "<li>" + prose(sentence) + "</li>\n";
    return out + "</ul>\n</section>\n";
}

std::string cell(const profile::BesideRow& row, const profile::BesideCell& cell) {
    if (!cell.value) return "<td>\xC2\xB7</td>";
    const std::string sign = cell.stands > 0   ? kHigher + std::string(" ")
                             : cell.stands < 0 ? kLower + std::string(" ")
                                               : "";
    return std::string("<td") + (cell.stands != 0 ? " class=\"out\"" : "") + ">" + sign +
           prose(profile::cell_text(row, cell)) + "<span class=\"quiet\">" +
           prose(profile::basis_text(row, cell)) + "</span></td>";
}

std::string table(const Beside& b) {
    std::string out = "<table class=\"beside\">\n<thead><tr><th class=\"what\"></th>";
    for (const auto& column : b.columns)
        out += "<th>" + safe(column.label) + "</th>";
    out += "</tr></thead>\n<tbody>\n";
    for (const auto& [name, cells] : profile::whole_rows(b)) {
        out += "<tr><td class=\"what\">" + safe(name) + "</td>";
        for (const auto& words : cells)
            out += "<td>" + (words.empty() ? std::string("\xC2\xB7") : prose(words)) + "</td>";
        out += "</tr>\n";
    }
    const std::string across = std::to_string(b.columns.size() + 1);
    for (const auto& facet : b.facets) {
        out += "<tr class=\"facet\"><th colspan=\"" + across + "\">" + safe(facet.name) +
               " <span class=\"quiet\">" + profile::basis_words(facet.basis) + "</span></th></tr>\n";
        for (const auto& row : facet.rows) {
            out += "<tr><td class=\"what\">" + safe(profile::capital(row.name)) + "</td>";
            for (const auto& one : row.cells)
                out += cell(row, one);
            out += "</tr>\n";
        }
    }
    return out + "</tbody></table>\n";
}

} // namespace

std::string beside_html(const Beside& b) {
    PageText text;
    text.kind = "Side by side";
    text.title = b.piece.empty() ? "Untitled" : b.piece;
    std::vector<std::string> labels;
    for (const auto& column : b.columns)
        labels.push_back(column.label);
    text.subtitle = labels.empty() ? "No performance" : "Technique profiles of " + profile::listed(labels);
    text.extra_css = std::string(kStyle);
    text.cautions = cautions();
    if (b.columns.empty()) return page(text);
    auto& body = text.body_html;
    body += "<h2>What stands out in each</h2>\n<div class=\"cards\">\n";
    for (const auto& column : b.columns)
        body += card(column);
    body += "</div>\n";
    for (const auto& sentence : profile::unlike_conditions(b))
        body += element("p", "quiet", sentence);
    body += "<h2>Figure by figure</h2>\n" + table(b) +
            element("p", "quiet", profile::range_rule() + " " + profile::beside_rule(kHigher, kLower));
    return page(text);
}

} // namespace luft::exports
