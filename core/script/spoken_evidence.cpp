// Which marks speak for a shade, and how one says it.
#include "script/singing.h"
#include "script/spoken.h"

#include <algorithm>
#include <cmath>

namespace luft::script {
namespace {

using marks::Note;
using vocabulary::Tag;

/// Less than this is no rise or fall that an audience hears. Common practice, no source.
constexpr double kHeardLevelChange = 2; // dB

/// Marks of one kind that count and touch the span (by a little, as marks and moments needn't agree to the
/// hop).
template <class Kind>
std::vector<const Kind*> touching(const std::vector<project::Mark>& marks, Span span) {
    constexpr Seconds kSlack{0.03};
    std::vector<const Kind*> out;
    for (const auto& mark : marks) {
        const auto* what = std::get_if<Kind>(&mark.what);
        const Span own = mark.span();
        if (what && counts(mark) && own.start < span.end + kSlack && own.end > span.start - kSlack)
            out.push_back(what);
    }
    return out;
}

/// The note for which `size` is greatest; null when it is 0 for all.
template <class Size>
const Note* most(const std::vector<const Note*>& notes, Size size) {
    const Note* best = nullptr;
    double best_size = 0;
    for (const Note* n : notes)
        if (const double s = size(*n); s > best_size) {
            best = n;
            best_size = s;
        }
    return best;
}

std::optional<std::string> of_vibrato(const Tag& tag, const std::vector<const Note*>& notes) {
    if (tag.shade == "straight") return std::nullopt;
    const Note* note = most(notes, [](const Note& n) { return n.vibrato ? n.span.length().value() : 0; });
    if (!note) return std::nullopt;
    const int rate = static_cast<int>(std::lround(note->vibrato->rate.value()));
    return "It swings about " + spoken_number(rate) + " times a second, " +
           spoken_interval(note->vibrato->extent) + " to either side.";
}

std::optional<std::string> of_intonation(const Tag& tag, const std::vector<const Note*>& notes) {
    const double sign = tag.shade == "sharp" ? 1 : -1;
    if (tag.shade == "sharp" || tag.shade == "flat") {
        const Note* note = most(notes, [&](const Note& n) { return sign * n.cents.value(); });
        if (!note || std::abs(note->cents.value()) < 8) return std::nullopt;
        return "It lies " + spoken_interval(note->cents) + (sign > 0 ? " too high." : " too low.");
    }
    if (tag.shade == "scooped") {
        const Note* note = most(notes, [](const Note& n) { return n.scoop ? n.scoop->value() : 0; });
        if (!note) return std::nullopt;
        return "The slide begins " + spoken_interval(*note->scoop) + " below the note.";
    }
    if (tag.shade == "drifting") {
        const Note* note = most(notes, [](const Note& n) { return std::abs(n.drift.value()); });
        if (!note || std::abs(note->drift.value()) < 8) return std::nullopt;
        return "From start to end it moves " + spoken_interval(note->drift) +
               (note->drift > Cents(0) ? " up." : " down.");
    }
    return std::nullopt;
}

std::optional<std::string> of_dynamics(const Tag& tag, const std::vector<const Note*>& notes) {
    const double sign = tag.shade == "crescendo" ? 1 : tag.shade == "decrescendo" ? -1 : 0;
    if (sign == 0 || notes.empty()) return std::nullopt;
    const double change = notes.size() == 1 ? notes.front()->level_change.value()
                                            : (notes.back()->level - notes.front()->level).value();
    if (sign * change < kHeardLevelChange) return std::nullopt;
    const std::string where = notes.size() == 1 ? "Within this one note" : "From the first note to the last";
    return where + " the level " + (sign > 0 ? "rises" : "falls") + " by about " +
           spoken_number(static_cast<int>(std::lround(std::abs(change)))) + " decibels.";
}

std::optional<std::string> of_register(const Tag& tag, Span span, const std::vector<project::Mark>& marks) {
    if (tag.shade != "switch-smooth" && tag.shade != "switch-break") return std::nullopt;
    const auto switches = touching<marks::Switch>(marks, span);
    if (switches.empty()) return std::nullopt;
    const marks::Switch& s = *switches.front();
    const bool up = s.to == marks::Register::head;
    return std::string("It goes from ") + (up ? "chest to head" : "head to chest") +
           (s.leap ? ", on a leap." : ", within the line.");
}

std::optional<std::string> of_breath(const Tag& tag, Span span, const std::vector<project::Mark>& marks) {
    const auto breaths = touching<marks::Breath>(marks, span);
    if (breaths.empty()) return std::nullopt;
    const auto* b = *std::ranges::max_element(breaths, {}, [](const auto* x) { return x->span.length(); });
    const std::string length = spoken_length(b->span.length());
    if (b->evidence_kind == marks::BreathEvidence::heard) return "It takes " + length + ".";
    // Who tags it as audible has heard it; then only the length of the gap is the program's to add.
    if (tag.shade == "audible") return "The gap for it is " + length + " long.";
    return "The music covers the breath itself. Only the gap in the line speaks for it, " + length + " long.";
}

std::optional<std::string> of_phrasing(const Tag& tag, Span span, const std::vector<project::Mark>& marks) {
    if (tag.shade != "long-line" && tag.shade != "joined") return std::nullopt;
    const auto phrases = touching<marks::Phrase>(marks, span);
    if (phrases.empty()) return std::nullopt;
    const auto* p = *std::ranges::max_element(phrases, {}, [](const auto* x) { return x->span.length(); });
    return "The line runs for " + spoken_length(p->span.length()) + ".";
}

bool is_kind(const Tag& tag, const Note& n) {
    using marks::OffsetKind;
    using marks::OnsetKind;
    if (tag.facet == "onset")
        return (tag.shade == "glottal" && n.onset.kind == OnsetKind::glottal) ||
               (tag.shade == "breathy" && n.onset.kind == OnsetKind::breathy) ||
               (tag.shade == "balanced" && n.onset.kind == OnsetKind::balanced);
    return (tag.shade == "clean" && n.offset.kind == OffsetKind::clean) ||
           (tag.shade == "breathy" && n.offset.kind == OffsetKind::breathy) ||
           (tag.shade == "trailing" && n.offset.kind == OffsetKind::trailing);
}

} // namespace

std::optional<std::string> spoken_evidence(const Tag& tag, Span span,
                                           const std::vector<project::Mark>& marks) {
    const auto notes = touching<Note>(marks, span);
    if (tag.facet == "vibrato") return of_vibrato(tag, notes);
    if (tag.facet == "intonation") return of_intonation(tag, notes);
    if (tag.facet == "dynamics") return of_dynamics(tag, notes);
    if (tag.facet == "register") return of_register(tag, span, marks);
    if (tag.facet == "breath") return of_breath(tag, span, marks);
    if (tag.facet == "phrasing") return of_phrasing(tag, span, marks);
    return std::nullopt;
}

std::string written_evidence(const Tag& tag, Span span, const std::vector<project::Mark>& marks) {
    if (tag.facet != "onset" && tag.facet != "offset") return {};
    const bool onset = tag.facet == "onset";
    const Note* note = most(touching<Note>(marks, span), [&](const Note& n) {
        return is_kind(tag, n) ? (onset ? n.onset.confidence.value : n.offset.confidence.value) : 0;
    });
    if (!note) return {};
    return onset ? note->onset.evidence : note->offset.evidence;
}

} // namespace luft::script
