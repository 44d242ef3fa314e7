// How the lines are built and carried.
#include "base/text.h"
#include "profile/facets.h"
#include "profile/lines.h"
#include "profile/statistics.h"
#include "profile/thresholds.h"
#include "profile/words.h"

#include <algorithm>

namespace luft::profile {
namespace {

constexpr int kLeastPhrases = 4;
constexpr double kManyLong = 0.3; ///< share of long lines that makes a strength (no source)
constexpr double kMostEven = 0.6; ///< share of even lines that makes a strength (no source)
constexpr double kManyFading = 0.4;

void find_worth_saying(const std::vector<SungLine>& lines, Draft& d) {
    const auto all = static_cast<int>(lines.size());
    if (all < kLeastPhrases) return;
    const int lengthy = d.tally.count("long-line"), even = d.tally.count("even"),
              broken = d.tally.count("broken");
    if (lengthy >= kManyLong * all && lengthy >= 2)
        d.find(FindingKind::strength, "long-line", 0.4 + static_cast<double>(lengthy) / all / 2,
               counted(lengthy, "phrase is", "phrases are") + " carried for " + fixed(kLongLine.value(), 0) +
                   " s and more without a breath (" + times(d.tally.spans("long-line")) + ").",
               d.tally.best("long-line"));
    if (even >= kMostEven * all)
        d.find(FindingKind::strength, "even", static_cast<double>(even) / all,
               "The line keeps its level to the last note in " + std::to_string(even) + " of " +
                   counted(all, "phrase") + ".",
               d.tally.best("even"));
    if (broken >= 2 || broken >= 0.2 * all)
        d.find(FindingKind::watch, "broken", static_cast<double>(broken) / all,
               counted(broken, "phrase falls", "phrases fall") + " into bits (" +
                   times(d.tally.spans("broken")) + ").",
               d.tally.best("broken"));
    std::vector<Span> fading;
    std::optional<Example> worst;
    double most = 0;
    for (const auto& line : lines)
        if (line.end_under && *line.end_under >= kFadingEnd.value()) {
            fading.push_back(line.span);
            if (*line.end_under > most) {
                most = *line.end_under;
                worst =
                    Example{line.span, "last note " + fixed(most, 0) + " dB under the rest of its phrase"};
            }
        }
    if (static_cast<double>(fading.size()) >= kManyFading * all)
        d.find(FindingKind::watch, "long-line", static_cast<double>(fading.size()) / all,
               std::to_string(fading.size()) + " of " + counted(all, "phrase") + " end " +
                   fixed(kFadingEnd.value(), 0) +
                   " dB and more under their own level; it may be a shaped "
                   "ending, or the breath running out.",
               worst);
}

} // namespace

void phrasing(const Material& m, Draft& d) {
    const auto lines = lines_of(m);
    const auto all = static_cast<int>(lines.size());
    Seconds time;
    for (const auto& line : lines)
        time += line.span.length();
    d.tally.open("length", ShareBy::count, "phrase", "phrases", all, time, {"long-line"});
    d.tally.open("line", ShareBy::count, "phrase", "phrases", all, time, {"even", "broken"});
    Values length, count, gaps, end;
    for (const auto& line : lines) {
        const int third = m.third_at(line.span), quarter = m.quarter_of(line.span.middle());
        const std::string words =
            "phrase of " + length_text(line.span.length()) + " and " + counted(line.notes, "note");
        length.add(line.span.length().value(), third, quarter);
        count.add(line.notes, third, quarter);
        for (const double gap : line.gaps)
            gaps.add(gap * 1000, third, quarter);
        if (line.end_under) end.add(-*line.end_under, third, quarter);
        if (line.span.length() >= kLongLine && line.breaths_inside == 0)
            d.tally.add("length", "long-line", line.span, line.span.length().value(), words);
        if (line.broken())
            d.tally.add("line", "broken", line.span, line.breaths_inside + line.holes,
                        words + (line.breaths_inside > 0
                                     ? ", a breath inside it"
                                     : ", " + counted(line.holes, "hole") + " inside it"));
        else if (line.even())
            d.tally.add("line", "even", line.span, line.span.length().value() - *line.level_spread,
                        words + ", level within " + fixed(*line.level_spread, 0) + " dB");
    }
    add_measure(d.measures, "phrase_length_s", "Length of a phrase", "s", 1, length,
                "From the first to the last sung sound of the line.");
    add_measure(d.measures, "phrase_notes", "Notes in a phrase", "notes", 0, count,
                "Sung notes, as detected.");
    add_measure(d.measures, "gap_ms", "Gap between notes in a phrase", "ms", 0, gaps,
                "Consonants make gaps too; near 0 the line is joined.");
    add_measure(d.measures, "phrase_end_db", "Level of the last note", "dB", 0, end,
                "Against the median of the phrase; under 0 the end fades.");
    if (all > 0)
        d.say(counted(all, "phrase") + ", " + spread_text(length, "s", 1) + " long; " +
              counted(d.tally.count("even"), "keeps", "keep") + " an even level and " +
              counted(d.tally.count("broken"), "falls", "fall") + " into bits.");
    d.good = d.tally.count("even") > 0 ? "even" : "long-line";
    d.contrast = "broken";
    find_worth_saying(lines, d);
}

} // namespace luft::profile
