#include "profile/beside_words.h"

#include "base/text.h"
#include "profile/words.h"

namespace luft::profile {
namespace {

std::string figure(const BesideRow& row, double value) {
    Measure m;
    m.unit = row.unit, m.digits = row.digits;
    return figure_text(m, value);
}

} // namespace

std::string cell_text(const BesideRow& row, const BesideCell& cell) {
    if (!cell.value) return {};
    if (row.share) return cell.count == 0 ? "none" : percent(*cell.value);
    if (const std::string text = figure(row, *cell.value);
        row.unit == "cents" && (text == "1" || text == "-1"))
        return text + " cent";
    return figure(row, *cell.value) + (row.unit.empty() || row.unit == "MIDI" ? "" : " " + row.unit);
}

std::string basis_text(const BesideRow& row, const BesideCell& cell) {
    if (!cell.value) return {};
    if (row.share) {
        if (cell.count == 0) return cell.of;
        const bool counted_so = cell.of.starts_with("of " + std::to_string(cell.out_of) + " ");
        return counted_so ? std::to_string(cell.count) + " " + cell.of
                          : profile::counted(cell.count, "place") + "; " + cell.of;
    }
    return figure(row, cell.low) + " to " + figure(row, cell.high) + ", " +
           profile::counted(cell.count, "value");
}

std::string stands_words(const Beside& all, const BesideFacet& facet, const BesideRow& row,
                         std::size_t column) {
    const BesideCell& cell = row.cells[column];
    std::string words = facet.name + ": " + row.name +
                        (row.share ? (cell.stands > 0 ? " more often, " : " less often, ")
                                   : (cell.stands > 0 ? " higher, " : " lower, ")) +
                        cell_text(row, cell) + (row.share ? " " + cell.of : "");
    const char* before = "; ";
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
        if (c == column || !held_against(all, facet, row, column, c)) continue;
        words += before + all.columns[c].label + " " + cell_text(row, row.cells[c]);
        before = ", ";
    }
    return words + ".";
}

std::string basis_words(vocabulary::Basis basis) {
    return basis == vocabulary::Basis::measured ? "measured"
           : basis == vocabulary::Basis::hint   ? "a hint only"
                                                : "the coach's judgement";
}

std::vector<WholeRow> whole_rows(const Beside& all) {
    std::vector<WholeRow> rows;
    const auto add = [&](const char* name, auto text_of) {
        WholeRow row{name, {}};
        for (const BesideColumn& column : all.columns)
            row.cells.push_back(text_of(column));
        rows.push_back(std::move(row));
    };
    const auto length = [](const std::optional<Seconds>& t) { return t ? length_text(*t) : std::string(); };
    const auto number = [](const std::optional<int>& n) { return n ? std::to_string(*n) : std::string(); };
    add("Length", [&](const auto& c) { return length(c.duration); });
    add("Sung", [&](const auto& c) { return length(c.sung); });
    add("Heard", [](const auto& c) {
        return !c.listening                                    ? std::string()
               : c.listening->setting == voice::Setting::alone ? std::string("voice alone")
                                                               : std::string("with accompaniment");
    });
    add("Tuning, A4", [](const auto& c) {
        return c.listening ? fixed(c.listening->tuning.value(), 1) + " Hz" : std::string();
    });
    add("Range", [](const auto& c) {
        return c.range ? note_name(c.range->lowest) + " to " + note_name(c.range->highest) : std::string();
    });
    add("Tessitura", [](const auto& c) {
        return c.range ? note_name(c.range->tessitura_low) + " to " + note_name(c.range->tessitura_high)
                       : std::string();
    });
    add("Notes", [&](const auto& c) { return number(c.notes); });
    add("Breaths", [&](const auto& c) { return number(c.breaths); });
    add("Phrases", [&](const auto& c) { return number(c.phrases); });
    add("Register switches", [&](const auto& c) { return number(c.switches); });
    return rows;
}

std::vector<std::string> unlike_conditions(const Beside& all) {
    std::vector<std::string> alone, accompanied, unheard;
    for (const BesideColumn& c : all.columns)
        (!c.listening                                    ? unheard
         : c.listening->setting == voice::Setting::alone ? alone
                                                         : accompanied)
            .push_back(c.label);
    std::vector<std::string> out;
    if (!alone.empty() && !accompanied.empty())
        out.push_back("Heard alone: " + listed(alone) + "; with accompaniment: " + listed(accompanied) +
                      ". Under accompaniment the ear is less sure, and what it hears of breaths can't be set "
                      "beside what it hears alone.");
    if (!unheard.empty()) out.push_back("Not listened to yet: " + listed(unheard) + ".");
    return out;
}

std::string nothing_stands_out() {
    return "Nothing stands out beyond the spread of its own figures.";
}

std::string beside_rule(const std::string& higher, const std::string& lower) {
    return "A figure stands out where what is usual in one performance (its median) would be rare in every "
           "other (outside the middle 80 % of its values), and the other way round, and where that is beyond "
           "chance for as many values as there are; shares, where chance would do it in under 3 of 1000 "
           "cases. What stands out carries " +
           higher + " where it lies above all that it was held against, and " + lower +
           " where it lies below. Under " + std::to_string(kLeastBeside) +
           " values nothing is said. What is a hint or the coach's judgement is shown and never said to "
           "stand out: a microphone or a room could do it.";
}

std::string range_rule() {
    return "The range under a figure holds the middle 80 % of its values.";
}

} // namespace luft::profile
