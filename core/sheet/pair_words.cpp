#include "sheet/pair_words.h"

#include "base/text.h"

#include <cmath>

namespace luft::sheet {
namespace {

using compare::Difference;
using enum compare::DifferenceKind;

/// "3 semitones higher": the size without its sign, and the word that its sign asks for.
std::string sized(const Difference& d, const char* more, const char* less) {
    const double size = std::abs(d.size);
    const bool one = d.unit == compare::Unit::semitones && std::abs(size - 1) < 0.05;
    const int digits = size < 10 && std::abs(size - std::round(size)) > 0.05 ? 1 : 0;
    return fixed(size, digits) + " " + (one ? "semitone" : name_of(d.unit)) + " " +
           (d.size > 0 ? more : less);
}

} // namespace

std::string short_words(const Difference& d) {
    const auto count = static_cast<std::size_t>(std::lround(std::abs(d.size)));
    switch (d.kind) {
    case key:
        return "key " + sized(d, "higher", "lower");
    case tuning:
        return "tuned " + sized(d, "higher", "lower");
    case tempo:
        return sized(d, "faster", "slower");
    case lowest_note:
    case highest_note:
    case tessitura:
        return std::string(name_of(d.kind)) + " " + sized(d, "higher", "lower");
    case vibrato:
        if (!d.a) return d.size > 0 ? "vibrato more often" : "vibrato less often";
        return d.size > 0 ? "with vibrato" : "without vibrato";
    case vibrato_rate:
        return "vibrato " + sized(d, "faster", "slower");
    case vibrato_extent:
        return "vibrato " + sized(d, "wider", "narrower");
    case note_intonation:
        return sized(d, "higher", "lower");
    case phrase_intonation:
        return "line " + sized(d, "higher", "lower");
    case scoop:
        if (!d.a)
            return d.size > 0 ? "reaches notes from below more often" : "reaches notes from below less often";
        return "begun " + sized(d, "further below", "less far below");
    case drift:
        return "drifts " + sized(d, "higher", "lower");
    case crack:
        return d.size > 0 ? "cracks" : "doesn't crack";
    case vowel:
        return "other vowel colour";
    case closure: // over all by H1-H2, which goes up where a phrase's cepstral peak goes down
        return (d.size > 0) == d.a.has_value() ? "clearer" : "breathier";
    case ring:
        return sized(d, "more ring", "less ring");
    case level_range:
        return "range of loudness " + sized(d, "wider", "narrower");
    case level_shape:
        return "line " + std::string(d.size > 0 ? "grows " : "fades ") + fixed(std::abs(d.size), 0) +
               " dB more";
    case note_level:
        return "note " + std::string(d.size > 0 ? "grows " : "fades ") + fixed(std::abs(d.size), 0) +
               " dB more";
    case phrase_tempo:
        return "line " + sized(d, "faster", "slower");
    case added_notes:
        return counted(count, "note") + (d.size > 0 ? " more" : " fewer");
    case other_register:
        return "other register";
    case onset:
        return "begins otherwise";
    case offset:
        return "ends otherwise";
    case breath_added:
    case breath_saved:
    case breath_moved:
    case phrase_joined:
    case phrase_broken:
    case other_note:
        break;
    }
    return name_of(d.kind);
}

std::vector<int> pair_numbers(const std::vector<Difference>& differences) {
    std::vector<int> numbers;
    int last = 0;
    for (const Difference& d : differences)
        numbers.push_back(d.a || d.b ? ++last : 0);
    return numbers;
}

std::vector<std::string> pair_head(const PairSource& source, bool as_sung) {
    const std::string a = source.a.performance.label, b = source.b.performance.label;
    const int key = source.alignment.semitones;
    std::string shown = a + " above, " + b + " below";
    if (as_sung)
        shown += ", at the pitch that each sings";
    else if (key != 0)
        shown += ", shown " + counted(static_cast<std::size_t>(std::abs(key)), "semitone") +
                 (key > 0 ? " lower" : " higher") + " than sung";
    std::vector<std::string> out{shown + "."};
    std::string whole;
    for (const auto& d : source.differences)
        if (!d.a && !d.b) whole += (whole.empty() ? "" : "; ") + short_words(d);
    if (!whole.empty()) out.push_back("Over the whole, " + b + ": " + whole + ".");
    return out;
}

} // namespace luft::sheet
