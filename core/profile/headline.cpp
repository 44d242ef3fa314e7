#include "profile/headline.h"

#include "base/text.h"
#include "profile/words.h"

#include <algorithm>

namespace luft::profile {

std::vector<std::string> headline(const Material& m, const Profile& p) {
    std::vector<std::string> out;
    const std::string singer = p.performer.empty() ? "The singer" : p.performer;
    if (m.notes.empty()) {
        out.push_back(m.source.listening ? "No sung note in this recording was sure enough to be counted."
                                         : "This recording hasn't been listened to yet.");
        return out;
    }
    std::string first = singer + " sings " + counted(p.notes, "note");
    // Not of phrases of which some are too unsure to count: there are more then than are told.
    const bool all_count = std::ranges::none_of(m.source.marks, [](const project::Mark& mark) {
        return mark.kind() == project::MarkKind::phrase && mark.state == project::MarkState::proposed &&
               mark.confidence() < kLeastConfidence;
    });
    if (p.phrases > 0 && all_count) first += " in " + counted(p.phrases, "phrase");
    first += ", " + length_text(p.sung) + " of singing";
    if (p.duration > Seconds(0)) first += " in a recording of " + length_text(p.duration);
    first += m.accompanied ? ", with accompaniment." : ".";
    out.push_back(first);

    const auto& r = *p.range;
    out.push_back(note_name(r.lowest) == note_name(r.highest)
                      ? "All of it lies on " + note_name(r.lowest) + "."
                      : "It spans " + note_name(r.lowest) + " to " + note_name(r.highest) +
                            ", most of it between " + note_name(r.tessitura_low) + " and " +
                            note_name(r.tessitura_high) + ".");
    const auto first_of = [](const std::vector<Finding>& list, const char* coach, const char* ours) {
        const std::string& words = list.front().words;
        if (!list.front().coach) return ours + words;
        // The coach's words are told with their place before them: "At 0:21.0: …".
        return words.starts_with("At ") ? std::string(coach) + ", at " + words.substr(3)
                                        : coach + (": " + words);
    };
    if (!p.strengths.empty())
        out.push_back(first_of(p.strengths, "The coach's first praise", "What stands out: "));
    if (!p.watch.empty())
        out.push_back(first_of(p.watch, "The coach's first point", "First thing to look at: "));
    if (p.left_out > 0)
        out.push_back(capital(counted(p.left_out, "proposed mark was", "proposed marks were")) +
                      " too unsure to be counted here; keeping " + (p.left_out == 1 ? "it" : "them") +
                      " in the project brings " + (p.left_out == 1 ? "it" : "them") + " in.");
    return out;
}

} // namespace luft::profile
