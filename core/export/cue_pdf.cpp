#include "export/cue_pdf.h"

#include "export/cue_pdf_table.h"
#include "export/cue_strip_print.h"
#include "export/cue_words.h"
#include "export/paper_page.h"

namespace luft::exports {
namespace {

class Printer {
  public:
    Printer(sheet::Flow& flow, const Print& print, const script::Source& source,
            const script::CueSheet& sheet)
        : flow_(flow), print_(print), c_(print.colours), source_(source), sheet_(sheet) {}

    void figures() {
        const auto all = cue_figures(source_, sheet_);
        const double wide = flow_.paper().room_across() / static_cast<double>(all.size());
        sheet::FlowRow row;
        for (const Figure& f : all)
            row.cells.push_back(
                {wide * static_cast<double>(row.cells.size()),
                 wide - 10,
                 {words_in(f.name, print_.small, c_.soft), words_in(f.value, {19, false, false}, c_.ink),
                  words_in(f.note, print_.small, c_.soft)}});
        flow_.row(std::move(row));
        flow_.space(6);
    }

    void strip() {
        if (sheet_.running_time <= Rational(0)) return;
        const double width = flow_.paper().room_across();
        flow_.picture(kStripHeight, [width, &sheet = sheet_, &c = c_](sheet::Canvas& canvas) {
            draw_cue_strip(canvas, sheet, width, c);
        });
        flow_.space(10);
    }

    void warnings() {
        if (sheet_.warnings.empty())
            flow_.text(words_in("Nothing to mend: no warnings.", print_.small, c_.soft));
        for (const auto& w : sheet_.warnings) {
            sheet::FlowRow row;
            sheet::Text text = words_in(w.words, print_.plain, c_.ink);
            const bool first = &w == sheet_.warnings.data();
            if (first) {
                row.cells.push_back({12,
                                     flow_.paper().room_across() - 12,
                                     {words_in("Before you record", print_.heading, c_.watch)}});
                row.cells[0].texts[0].heading = true;
                row.cells[0].texts.push_back(std::move(text));
            } else {
                row.cells.push_back({12, flow_.paper().room_across() - 12, {std::move(text)}});
            }
            row.bar = sheet::Bar{0, 4, c_.watch, true};
            row.below = 3;
            flow_.row(std::move(row));
        }
        flow_.space(12);
    }

  private:
    sheet::Flow& flow_;
    const Print& print_;
    const sheet::Colours& c_;
    const script::Source& source_;
    const script::CueSheet& sheet_;
};

void add_credits(sheet::Flow& flow, const Print& print, const script::Source& source,
                 const script::CueSheet& sheet) {
    flow.space(14);
    flow.keep();
    flow.text(words_in("Credits and permission", print.section, print.colours.ink), 0, 4);
    for (const Credit& credit : credits(source, sheet)) {
        sheet::FlowRow row;
        row.cells = {{0, kCueMediaColumn - 8, {words_in(credit.name, print.plain, print.colours.soft)}},
                     {kCueMediaColumn,
                      flow.paper().room_across() - kCueMediaColumn,
                      {words_in(credit.text, print.plain, print.colours.ink)}}};
        row.below = 2;
        flow.row(std::move(row));
    }
    flow.end_keep();
}

} // namespace

void cue_pdf(const script::Source& source, const script::CueSheet& sheet, const std::filesystem::path& file,
             const Progress& progress) {
    const std::string& performer = source.performance.performer;
    const PaperHead head{.kind = "Cue sheet",
                         .title = title_of(source.piece),
                         .subtitle = performer.empty() ? "" : "sung by " + performer,
                         .facts = cue_facts(source, sheet)};
    write_paper(
        file, head,
        [&](sheet::Flow& flow, const Print& print) {
            Printer printer(flow, print, source, sheet);
            printer.figures();
            printer.strip();
            printer.warnings();
            add_cue_table(flow, print, source, sheet);
            add_credits(flow, print, source, sheet);
        },
        progress);
}

} // namespace luft::exports
