// How notes start and end.
#include "base/text.h"
#include "profile/facets.h"
#include "profile/words.h"

namespace luft::profile {
namespace {

/// A start or end less sure than this isn't counted, unless the coach kept the note (as for whole marks).
constexpr Confidence kLeastEdge = kLeastConfidence;
/// From this share on one kind is called the habit of the performance (common practice, no source).
constexpr double kHabit = 0.7;
/// From this share on an uneven kind is worth a word (common practice, no source).
constexpr double kNotable = 0.25;
/// Fewer occurrences than this are no habit (no source).
constexpr int kLeastOccurrences = 3;

const char* key(marks::OnsetKind kind) {
    using enum marks::OnsetKind;
    return kind == glottal ? "glottal" : kind == breathy ? "breathy" : "balanced";
}
const char* key(marks::OffsetKind kind) {
    using enum marks::OffsetKind;
    return kind == clean ? "clean" : kind == breathy ? "breathy" : "trailing";
}

/// What differs between starts and ends.
struct Side {
    std::string axis, one;           ///< "start of the note", "note start"
    std::vector<std::string> shades; ///< the even one first
    std::string starts;              ///< "starts"
    std::string where;               ///< "after a gap"
};

/// "Of 42 note starts after a gap, 30 are balanced, 8 breathy and 4 glottal."
void say_counts(Draft& d, const Side& side, int counted_all, int unsure) {
    std::vector<std::string> parts;
    for (const auto& shade : side.shades)
        if (const int n = d.tally.count(shade); n > 0)
            parts.push_back(std::to_string(n) + (parts.empty() ? (n == 1 ? " is " : " are ") : " ") + shade);
    if (parts.empty()) return;
    d.say("Of " + counted(counted_all, side.one) + " " + side.where + ", " + listed(parts) + ".");
    if (unsure > 0) d.say(capital(counted(unsure, "more is", "more are")) + " too unsure to be told.");
}

void find_habits(Draft& d, const Side& side, int all) {
    if (all < kLeastOccurrences) return;
    const std::string& even = side.shades.front();
    const double share = static_cast<double>(d.tally.count(even)) / all;
    if (share >= kHabit)
        d.find(FindingKind::strength, even, share,
               "The " + side.starts + " are " + even + " as a rule: " + std::to_string(d.tally.count(even)) +
                   " of " + std::to_string(all) + " (" + percent(share) + ").",
               d.tally.best(d.good));
    for (std::size_t i = 1; i < side.shades.size(); ++i) {
        const auto& shade = side.shades[i];
        const int n = d.tally.count(shade);
        const double part = static_cast<double>(n) / all;
        const auto third = d.tally.gathered_in(shade);
        if (n < kLeastOccurrences || part < kNotable) continue;
        std::string words = capital(shade) + " " + side.starts +
                            " colour this performance: " + std::to_string(n) + " of " + std::to_string(all) +
                            " (" + percent(part) + ")";
        if (third) words += ", mostly in the " + std::string(kThirdNames[*third]) + " range";
        words += ". Worth asking whether each is meant.";
        d.find(FindingKind::watch, shade, part, words, d.tally.best(shade));
    }
}

} // namespace

void onsets(const Material& m, Draft& d) {
    const Side side{
        "start of the note", "note start", {"balanced", "breathy", "glottal"}, "starts", "after a gap"};
    int all = 0, unsure = 0;
    std::vector<const SungNote*> taken;
    for (const auto& n : m.notes) {
        const auto& onset = n.note->onset;
        // Inside a joined line there is no attack to speak of, unless the ear has heard one.
        if (n.joined_before && onset.kind == marks::OnsetKind::balanced) continue;
        if (onset.confidence < kLeastEdge)
            ++unsure;
        else
            taken.push_back(&n), ++all;
    }
    d.tally.open(side.axis, ShareBy::count, side.one, side.one + "s", all, Seconds(0), side.shades);
    for (const auto* n : taken) {
        const auto& onset = n->note->onset;
        d.tally.add(side.axis, key(onset.kind), *n, onset.confidence.value,
                    std::string(key(onset.kind)) + " start of " + Material::name(*n) +
                        (onset.evidence.empty() ? "" : ": " + onset.evidence));
    }
    say_counts(d, side, all, unsure);
    d.good = "balanced";
    d.contrast = d.tally.count("glottal") >= d.tally.count("breathy") ? "glottal" : "breathy";
    find_habits(d, side, all);
}

void offsets(const Material& m, Draft& d) {
    const Side side{"end of the note", "note end", {"clean", "breathy", "trailing"}, "ends", "before a gap"};
    int all = 0, unsure = 0;
    std::vector<const SungNote*> taken;
    for (const auto& n : m.notes) {
        const auto& offset = n.note->offset;
        if (n.joined_after && offset.kind == marks::OffsetKind::clean) continue;
        if (offset.confidence < kLeastEdge)
            ++unsure;
        else
            taken.push_back(&n), ++all;
    }
    d.tally.open(side.axis, ShareBy::count, side.one, side.one + "s", all, Seconds(0), side.shades);
    for (const auto* n : taken) {
        const auto& offset = n->note->offset;
        d.tally.add(side.axis, key(offset.kind), *n, offset.confidence.value,
                    std::string(key(offset.kind)) + " end of " + Material::name(*n) +
                        (offset.evidence.empty() ? "" : ": " + offset.evidence));
    }
    say_counts(d, side, all, unsure);
    d.good = "clean";
    d.contrast = d.tally.count("trailing") >= d.tally.count("breathy") ? "trailing" : "breathy";
    find_habits(d, side, all);
}

} // namespace luft::profile
