#include "export/beside_text.h"

#include "export/page.h"
#include "export/plain_text.h"
#include "export/text_table.h"
#include "profile/beside_words.h"
#include "profile/words.h"

namespace luft::exports {
namespace {

constexpr const char* kNoSign = "  "; // as wide as " +", so that figures stand in line

} // namespace

std::string beside_text(const profile::Beside& b) {
    std::string out = "Side by side: " + one_line(b.piece.empty() ? "untitled" : b.piece) + "\n";
    for (const auto& column : b.columns) {
        out += "\n" + one_line(column.label) +
               (column.performer.empty() ? "" : ", sung by " + one_line(column.performer)) + "\n";
        for (const auto& sentence : column.stands_out)
            out += paragraph("- " + one_line(sentence), 2);
        if (column.stands_out.empty()) out += "  " + profile::nothing_stands_out() + "\n";
    }
    for (const auto& sentence : profile::unlike_conditions(b))
        out += "\n" + paragraph(sentence, 0);
    std::vector<Table::Column> columns{{""}};
    for (const auto& column : b.columns)
        columns.push_back({one_line(column.label) + kNoSign, Align::right});
    Table table(columns);
    const auto add = [&](std::string name, std::vector<std::string> cells) {
        cells.insert(cells.begin(), std::move(name));
        table.add(std::move(cells));
    };
    for (auto& [name, cells] : profile::whole_rows(b)) {
        for (std::string& cell : cells)
            cell += kNoSign;
        add(name, std::move(cells));
    }
    for (const auto& facet : b.facets) {
        add("", {});
        add(facet.name + " (" + profile::basis_words(facet.basis) + ")", {});
        for (const auto& row : facet.rows) {
            std::vector<std::string> cells;
            for (const auto& cell : row.cells)
                cells.push_back(profile::cell_text(row, cell) + (cell.stands > 0   ? " +"
                                                                 : cell.stands < 0 ? " -"
                                                                                   : kNoSign));
            add("  " + row.name, std::move(cells));
        }
    }
    out +=
        "\n" + table.text() + "\n" + paragraph(profile::beside_rule("+", "-"), 0) + "\nPlease keep in mind\n";
    for (const auto& caution : cautions())
        out += paragraph("- " + caution, 2);
    return out;
}

} // namespace luft::exports
