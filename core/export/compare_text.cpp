#include "export/compare_text.h"

#include "base/text.h"
#include "export/compare_words.h"
#include "export/plain_text.h"
#include "export/text_table.h"

namespace luft::exports {
namespace {

using compare::Comparison;

std::string talk_text(const Comparison& c) {
    const auto points = talk_points(c);
    if (points.empty()) return {};
    std::string text = "\nTo speak of first\n";
    for (std::size_t i = 0; i < points.size(); ++i) {
        const TalkPoint& point = points[i];
        text += paragraph(std::to_string(i + 1) + ". " + point.words, 2) +
                paragraph((point.hear.empty() ? "" : point.hear + "; ") + point.sure + ".", 5);
    }
    return text + paragraph(talk_caution(), 2);
}

std::string differences_text(const Comparison& c) {
    if (c.differences.empty()) return "\n" + nothing_differs() + "\n";
    Table table({{one_line(c.a.label)}, {"Size", Align::right}, {"Sure", Align::right}, {"Difference"}});
    for (const auto& d : c.differences)
        table.add(
            {d.a ? clock_text(d.a->start) : "whole", size_words(d), sure_words(d), one_line(d.sentence)});
    return "\nWhat " + one_line(c.b.label) + " does otherwise\n" + table.text();
}

} // namespace

std::string compare_text(const Comparison& c) {
    if (c.alignment.stretches.empty()) return nothing_shared(c) + "\n";
    std::string text = one_line(c.b.label) + " against " + one_line(c.a.label) + "\nKey      " +
                       key_words(c) + "\nTempo    " + tempo_words(c) + "\nNotes    " + notes_words(c) + "\n" +
                       talk_text(c) + "\n";
    Table table({{one_line(c.a.label)}, {one_line(c.b.label)}});
    for (const auto& row : phrase_lines(c))
        table.add({row.a, row.b});
    text += "Phrase against phrase\n" + table.text();
    for (const auto& line : gaps_words(c))
        text += line + "\n";
    return text + differences_text(c);
}

} // namespace luft::exports
