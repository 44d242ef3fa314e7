#include "export/compare_text.h"

#include "base/text.h"
#include "export/compare_words.h"
#include "export/text_table.h"

namespace luft::exports {
namespace {

using compare::Comparison;

std::string differences_text(const Comparison& c) {
    if (c.differences.empty()) return "\nNo difference beyond what the ear's own error would give\n";
    Table table({{one_line(c.a.label)}, {"Size", Align::right}, {"Sure", Align::right}, {"Difference"}});
    for (const auto& d : c.differences)
        table.add({d.a ? clock_text(d.a->start) : "whole", size_words(d),
                   fixed(100 * d.confidence.value, 0) + " %", one_line(d.sentence)});
    return "\nWhat " + one_line(c.b.label) + " does otherwise\n" + table.text();
}

} // namespace

std::string compare_text(const Comparison& c) {
    if (c.alignment.stretches.empty())
        return "'" + one_line(c.a.label) + "' and '" + one_line(c.b.label) +
               "' have nothing in common that could be found.\n";
    std::string text = one_line(c.b.label) + " against " + one_line(c.a.label) + "\nKey      " +
                       key_words(c) + "\nTempo    " + tempo_words(c) + "\nNotes    " + notes_words(c) +
                       "\n\n";
    Table table({{one_line(c.a.label)}, {one_line(c.b.label)}});
    for (const auto& row : phrase_lines(c))
        table.add({row.a, row.b});
    text += "Phrase against phrase\n" + table.text();
    for (const auto& line : gaps_words(c))
        text += line + "\n";
    return text + differences_text(c);
}

} // namespace luft::exports
