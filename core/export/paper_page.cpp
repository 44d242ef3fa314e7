#include "export/paper_page.h"

#include "base/shown_text.h"
#include "export/page.h"

#include <algorithm>

namespace luft::exports {
namespace {

constexpr double kFootSize = 8.5;

void add_head(sheet::Flow& flow, const PaperHead& head, const Print& print) {
    const auto& c = print.colours;
    flow.text(words_in(head.kind, print.plain, c.soft));
    flow.text(words_in(head.title, print.title, c.ink));
    if (!head.subtitle.empty()) flow.text(words_in(head.subtitle, print.spoken, c.soft));
    std::string facts;
    for (const auto& fact : head.facts)
        facts += (facts.empty() ? "" : "  ·  ") + fact;
    sheet::FlowRow last;
    last.cells.push_back({0, flow.paper().room_across(), {words_in(facts, print.small, c.soft)}});
    last.above = 3;
    last.below = 7;
    last.rule = c.ink;
    flow.row(std::move(last));
    flow.space(10);
}

void add_cautions(sheet::Flow& flow, const Print& print) {
    flow.space(14);
    flow.keep();
    flow.text(words_in("Please keep in mind", print.heading, print.colours.soft), 0, 3);
    for (const auto& caution : cautions())
        flow.text(words_in(caution, print.small, print.colours.soft), 0, 3);
    flow.end_keep();
}

void draw_foot(sheet::Canvas& canvas, const sheet::Paper& paper, const std::string& words, int page,
               int pages, const Print& print) {
    const double y = paper.height - paper.edge;
    const std::string number = std::to_string(page + 1) + " of " + std::to_string(pages);
    const sheet::Type type{kFootSize, false, false};
    const double room = paper.room_across() - canvas.extent(number, type).width - 12;
    canvas.paragraph(paper.edge, y - 8, room, settable(words), type, print.colours.soft, 1);
    canvas.text(paper.width - paper.edge, y, number, type, print.colours.soft, sheet::Anchor::end);
}

} // namespace

std::string settable(const std::string& text) {
    std::string out = shown(text);
    std::erase(out, '\r');
    return out;
}

sheet::Text words_in(const std::string& text, sheet::Type type, sheet::Colour colour, double gap) {
    return {.words = settable(text), .type = type, .colour = colour, .gap = gap};
}

void write_paper(const std::filesystem::path& file, const PaperHead& head,
                 const std::function<void(sheet::Flow&, const Print&)>& fill, const Progress& progress) {
    const sheet::Paper paper;
    sheet::Canvas canvas = sheet::Canvas::pdf(file, paper.width, paper.height);
    const Print print;
    sheet::Flow flow(canvas, paper);
    add_head(flow, head, print);
    fill(flow, print);
    add_cautions(flow, print);
    const int pages = flow.pages();
    for (int page = 0; page < pages; ++page) {
        progress.step(static_cast<double>(page) / pages, "printing");
        flow.draw(canvas, page);
        draw_foot(canvas, paper, head.kind + ": " + head.title, page, pages, print);
        canvas.next_page();
    }
    canvas.finish();
}

} // namespace luft::exports
