#include "export/compare_pdf.h"

#include "base/text.h"
#include "export/compare_words.h"
#include "export/pair_pictures.h"
#include "export/paper_page.h"
#include "export/tempo_curve.h"
#include "export/tempo_curve_print.h"

#include <algorithm>

namespace luft::exports {
namespace {

using compare::Comparison;

constexpr double kIndent = 22, kBetween = 14;
// Left edges of the table's columns, in points.
constexpr double kPlaceA = 18, kPlaceB = 66, kSays = 114, kSize = 322, kError = 384, kSure = 452;

class Printer {
  public:
    Printer(sheet::Flow& flow, const Print& print, const Comparison& comparison, const PairPictures& pairs)
        : flow_(flow), print_(print), c_(print.colours), comparison_(comparison), pairs_(pairs) {}

    void lead() {
        for (const auto& sentence : lead_words(comparison_))
            flow_.text(words_in(sentence, print_.spoken, c_.ink), 0, 2);
        flow_.space(8);
        const double wide = (across() - kBetween) / 2;
        sheet::FlowRow row;
        row.cells = {cell(0, wide, portrait(comparison_.a, comparison_.side_a)),
                     cell(wide + kBetween, wide, portrait(comparison_.b, comparison_.side_b))};
        row.below = 8;
        row.rule = c_.rule;
        flow_.row(std::move(row));
        flow_.space(12);
    }

    void to_speak_of() {
        heading("To speak of first");
        const auto points = talk_points(comparison_);
        if (points.empty()) flow_.text(words_in(nothing_differs(), print_.plain, c_.soft), 0, 6);
        for (std::size_t i = 0; i < points.size(); ++i) {
            const TalkPoint& point = points[i];
            std::string hear = (point.hear.empty() ? "" : point.hear + " · ") + point.sure;
            if (const auto number = pairs_.number_of(point.difference))
                hear += " · no.\u00A0" + std::to_string(*number);
            sheet::FlowRow row;
            row.cells = {
                {0, kIndent - 1, {words_in(std::to_string(i + 1), print_.section, c_.soft)}},
                {kIndent,
                 across() - kIndent,
                 {words_in(point.words, print_.spoken, c_.ink), words_in(hear, print_.plain, c_.soft, 1)}}};
            row.below = 7;
            flow_.row(std::move(row));
        }
        flow_.text(words_in(talk_caution(), print_.small, c_.soft), 2, 0);
    }

    void pictures() {
        const auto rows = pairs_.telling();
        if (rows.empty()) return;
        flow_.space(18);
        flow_.keep();
        heading("Where they differ most");
        flow_.text(words_in(pair_pictures_words(comparison_), print_.small, c_.soft), 0, 4);
        for (const std::size_t row : rows) {
            // Of very many differences in one line the signs alone would be higher than a page.
            const double most = 0.9 * flow_.paper().room_down() / pairs_.height(row);
            const double zoom = std::min(across() / pairs_.width(), most);
            flow_.picture(pairs_.height(row) * zoom, [&pairs = pairs_, row, zoom](sheet::Canvas& canvas) {
                canvas.zoom(zoom);
                pairs.draw(canvas, row);
            });
            flow_.end_keep(); // the heading with the first
            flow_.space(4);
        }
    }

    void tempo() {
        if (!has_tempo_curve(comparison_)) return;
        flow_.space(18);
        flow_.keep();
        heading("Tempo along the song");
        const double width = across();
        flow_.picture(kTempoCurveHeight, [width, &c = comparison_, &colours = c_](sheet::Canvas& canvas) {
            draw_tempo_curve(canvas, c, width, colours);
        });
        flow_.text(words_in(tempo_curve_words(), print_.small, c_.soft), 2);
        flow_.end_keep();
    }

    void phrases() {
        flow_.space(18);
        heading("Phrase against phrase");
        const double wide = 150;
        const auto row_of = [&](const std::string& a, const std::string& b, sheet::Colour colour) {
            sheet::FlowRow row;
            row.cells = {{0, wide - 10, {words_in(a, print_.plain, colour)}},
                         {wide, wide, {words_in(b, print_.plain, colour)}}};
            row.above = row.below = 1.5;
            row.rule = c_.rule;
            return row;
        };
        flow_.head(row_of(comparison_.a.label, comparison_.b.label, c_.soft));
        for (const auto& line : phrase_lines(comparison_))
            flow_.row(row_of(line.a, line.b, c_.ink));
        flow_.end_head();
        flow_.text(words_in("Notes: " + notes_words(comparison_) + ".", print_.small, c_.soft), 4, 2);
        for (const auto& line : gaps_words(comparison_))
            flow_.text(words_in(line + ".", print_.plain, c_.ink), 3);
    }

    void all_differences() {
        if (comparison_.differences.empty()) return;
        flow_.space(18);
        heading("Every difference");
        flow_.head(table_row({}, comparison_.a.label, comparison_.b.label,
                             {"What differs", "Size", "Error", "Sure"}, c_.soft));
        for (std::size_t i = 0; i < comparison_.differences.size(); ++i) {
            const auto& d = comparison_.differences[i];
            flow_.row(table_row(pairs_.number_of(i), place(d.a), place(d.b),
                                {d.sentence, size_words(d), expected_words(d), sure_words(d)}, c_.ink));
        }
        flow_.end_head();
        flow_.text(words_in(table_words(comparison_), print_.small, c_.soft), 4);
    }

  private:
    [[nodiscard]] double across() const { return flow_.paper().room_across(); }

    void heading(const std::string& words) {
        sheet::Text text = words_in(words, print_.section, c_.ink);
        text.heading = true;
        flow_.text(std::move(text), 0, 4);
    }

    [[nodiscard]] sheet::Cell cell(double left, double width, const Portrait& portrait) const {
        sheet::Cell out{left, width, {words_in(portrait.label, print_.heading, c_.ink)}};
        for (const auto& line : portrait.lines)
            out.texts.push_back(words_in(line, print_.small, c_.soft, 1));
        return out;
    }

    static std::string place(const std::optional<Span>& span) {
        return span ? clock_text(span->start) : "whole";
    }

    [[nodiscard]] sheet::FlowRow table_row(std::optional<int> number, const std::string& a,
                                           const std::string& b, const std::vector<std::string>& rest,
                                           sheet::Colour colour) const {
        const sheet::Type type = print_.small;
        sheet::FlowRow row;
        row.cells = {{0, kPlaceA - 2, {words_in(number ? std::to_string(*number) : "", type, c_.soft)}},
                     {kPlaceA, kPlaceB - kPlaceA - 6, {words_in(a, type, colour)}},
                     {kPlaceB, kSays - kPlaceB - 6, {words_in(b, type, colour)}},
                     {kSays, kSize - kSays - 10, {words_in(rest[0], type, colour)}},
                     {kSize, kError - kSize - 6, {words_in(rest[1], type, colour)}},
                     {kError, kSure - kError - 6, {words_in(rest[2], type, colour)}},
                     {kSure, across() - kSure, {words_in(rest[3], type, colour)}}};
        row.above = row.below = 2;
        row.rule = c_.rule;
        return row;
    }

    sheet::Flow& flow_;
    const Print& print_;
    const sheet::Colours& c_;
    const Comparison& comparison_;
    const PairPictures& pairs_;
};

} // namespace

void compare_pdf(const Comparison& c, const profile::Source& a, const profile::Source& b,
                 const std::filesystem::path& file, const Progress& progress) {
    PaperHead head{.kind = "Two performances",
                   .title = c.piece.title.empty() ? "Untitled" : c.piece.title,
                   .subtitle = c.b.label + " against " + c.a.label,
                   .facts = {}};
    if (!c.piece.writer.empty()) head.facts.push_back("written by " + c.piece.writer);
    const PairPictures pairs(c, a, b, kPairWidth);
    write_paper(
        file, head,
        [&](sheet::Flow& flow, const Print& print) {
            Printer printing(flow, print, c, pairs);
            printing.lead();
            if (c.alignment.stretches.empty()) return;
            printing.to_speak_of();
            printing.pictures();
            printing.tempo();
            printing.phrases();
            printing.all_differences();
        },
        progress);
}

} // namespace luft::exports
