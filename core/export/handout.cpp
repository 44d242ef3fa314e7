#include "export/handout.h"

#include "base/text.h"
#include "export/drill_places.h"
#include "export/inline_svg.h"
#include "export/page.h"
#include "export/phrase_pictures.h"

#include <cmath>

namespace luft::exports {
namespace {

constexpr std::string_view kStyle = R"css(
.drill { border-top: 1px solid var(--rule); padding-top: 0.2rem; margin-top: 1.4rem; }
.drill h2 { margin: 0.8rem 0 0.2rem; }
.number { color: var(--soft); font-variant-numeric: lining-nums tabular-nums; }
.hear { border-left: 3px solid var(--blue); padding-left: 0.8rem; }
.stop { border-left: 3px double var(--red); padding-left: 0.8rem; }
.phrase { margin: 0.5rem 0; }
.phrase svg { border: 1px solid var(--rule); }
)css";

class Drills {
  public:
    Drills(const profile::Profile& profile, const profile::Source& source)
        : profile_(profile), pictures_(source, kHandoutWidth) {}

    std::string drill(const vocabulary::Drill& d, std::size_t number) {
        std::string out = "<section class=\"drill keep\">\n<h2><span class=\"number\">" +
                          std::to_string(number) + "</span> <bdi>" + safe(d.title) + "</bdi></h2>\n";
        if (!d.aim.empty()) out += element("p", "aim", d.aim);
        if (!d.steps.empty()) {
            out += "<ol>\n";
            for (const auto& step : d.steps)
                out += element("li", "", step);
            out += "</ol>\n";
        }
        if (!d.caution.empty()) out += element("p", "stop", "Take care: " + d.caution);
        return out + hear(drill_places(profile_, d.key)) + "</section>\n";
    }

  private:
    std::string hear(const std::vector<profile::Example>& places) {
        if (places.empty()) return {};
        std::string out = "<div class=\"hear\">\n<h3>Hear what it is for</h3>\n<ul>\n";
        for (const auto& place : places)
            out += "<li><span class=\"time\">" + place_time(place) + "</span>" +
                   (place.words.empty() ? "" : ": <bdi>" + safe(place.words) + "</bdi>") + "</li>\n";
        out += "</ul>\n";
        for (const auto& phrase : pictures_.of(places))
            out += "<figure class=\"phrase\">\n" + picture(phrase) + "\n</figure>\n";
        return out + "</div>\n";
    }

    std::string picture(const PhrasePictures::Phrase& phrase) {
        sheet::Canvas canvas = sheet::Canvas::svg(pictures_.width(), std::ceil(pictures_.height(phrase)));
        pictures_.draw(canvas, phrase, sheet::light_colours().paper);
        std::string marked;
        for (const Span& place : phrase.places)
            marked += (marked.empty() ? "" : ", ") + clock_text(place.start) + " to " + clock_text(place.end);
        return inline_svg(canvas.take_svg(), "p" + std::to_string(++drawn_) + "-",
                          "The sung line at " + clock_text(phrase.sung.start) + "; marked in it: " + marked);
    }

    const profile::Profile& profile_;
    PhrasePictures pictures_;
    int drawn_ = 0;
};

} // namespace

std::string handout(const profile::Profile& p, const profile::Source& source) {
    PageText text;
    text.kind = "To practise";
    text.title = p.piece.empty() ? "Untitled" : p.piece;
    if (!p.performer.empty()) text.subtitle = "after the recording sung by " + p.performer;
    text.facts = handout_facts(p);
    text.body_html = element("p", "lead", handout_lead());
    if (p.drills.empty()) text.body_html += element("p", "quiet", "This recording asks for no drill so far.");
    Drills drills(p, source);
    for (std::size_t i = 0; i < p.drills.size(); ++i)
        text.body_html += drills.drill(p.drills[i], i + 1);
    if (!p.drills.empty())
        text.body_html += element("p", "quiet",
                                  "Times are minutes and seconds of the recording; the place is "
                                  "marked in its line of the song sheet.");
    text.extra_css = kStyle;
    text.cautions = cautions();
    return page(text);
}

} // namespace luft::exports
