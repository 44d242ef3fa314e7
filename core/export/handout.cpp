#include "export/handout.h"

#include "base/text.h"
#include "export/page.h"
#include "profile/words.h"

namespace luft::exports {
namespace {

/// More places than this for one drill aren't looked up by anybody; no source.
constexpr std::size_t kMostPlaces = 3;

constexpr std::string_view kStyle = R"css(
.drill { border-top: 1px solid var(--rule); padding-top: 0.2rem; margin-top: 1.4rem; }
.drill h2 { margin: 0.8rem 0 0.2rem; }
.number { color: var(--soft); font-variant-numeric: lining-nums tabular-nums; }
.hear { border-left: 3px solid var(--blue); padding-left: 0.8rem; }
.stop { border-left: 3px double var(--red); padding-left: 0.8rem; }
)css";

std::string hear(const profile::Profile& profile, const std::string& drill) {
    std::string out;
    std::size_t places = 0;
    for (const auto& finding : profile.practise) {
        if (finding.drill != drill) continue;
        for (const auto& example : finding.examples) {
            if (++places > kMostPlaces) break;
            out += "<li><span class=\"time\">" + clock_text(example.span.start) + " to " +
                   clock_text(example.span.end) + "</span>" +
                   (example.words.empty() ? "" : ": <bdi>" + safe(example.words) + "</bdi>") + "</li>\n";
        }
    }
    if (out.empty()) return out;
    return "<div class=\"hear\">\n<h3>Hear what it is for</h3>\n<ul>\n" + out + "</ul>\n</div>\n";
}

std::string drill(const profile::Profile& profile, const vocabulary::Drill& d, std::size_t number) {
    std::string out = "<section class=\"drill keep\">\n<h2><span class=\"number\">" + std::to_string(number) +
                      "</span> <bdi>" + safe(d.title) + "</bdi></h2>\n";
    if (!d.aim.empty()) out += element("p", "aim", d.aim);
    if (!d.steps.empty()) {
        out += "<ol>\n";
        for (const auto& step : d.steps)
            out += element("li", "", step);
        out += "</ol>\n";
    }
    if (!d.caution.empty()) out += element("p", "stop", "Take care: " + d.caution);
    return out + hear(profile, d.key) + "</section>\n";
}

} // namespace

std::string handout(const profile::Profile& p) {
    PageText text;
    text.kind = "To practise";
    text.title = p.piece.empty() ? "Untitled" : p.piece;
    if (!p.performer.empty()) text.subtitle = "after the recording sung by " + p.performer;
    if (!p.source.empty()) text.facts.push_back(p.source);
    if (p.duration > Seconds(0)) text.facts.push_back(profile::length_text(p.duration));
    text.body_html = element("p", "lead",
                             "Sing at ease, a few minutes at a time. Nothing here may hurt or make you "
                             "hoarse: then stop, and try it another day with your teacher. Hoarseness that "
                             "lasts more than three weeks belongs to a doctor, and so does pain or a voice "
                             "that stays away.");
    if (p.drills.empty()) text.body_html += element("p", "quiet", "This recording asks for no drill so far.");
    for (std::size_t i = 0; i < p.drills.size(); ++i)
        text.body_html += drill(p, p.drills[i], i + 1);
    if (!p.drills.empty())
        text.body_html += element("p", "quiet", "Times are minutes and seconds of the recording.");
    text.extra_css = kStyle;
    text.cautions = cautions();
    return page(text);
}

} // namespace luft::exports
