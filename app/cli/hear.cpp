#include "cli/hear.h"

#include "base/text.h"
#include "cli/table.h"

#include <algorithm>
#include <utility>

namespace luft::cli {

void listening_options(Verb& verb, intake::Listening& into) {
    choice_option<marks::Accompaniment>(verb, "--voice", into.accompaniment,
                                        {{"auto", marks::Accompaniment::find_out},
                                         {"alone", marks::Accompaniment::alone},
                                         {"accompanied", marks::Accompaniment::accompanied}},
                                        "Whether other instruments sound along; found out unless given");
    flag(verb, "--partial", into.partial,
         "Take a recording that has lost its end as far as it goes; those in a project always are");
}

std::string facts_line(const project::MediaFacts& facts) {
    std::string line = clock_text(facts.duration) + ", " + std::to_string(facts.sample_rate_hz) + " Hz, " +
                       counted(static_cast<std::size_t>(facts.channels), "channel");
    if (facts.has_video && facts.frame_rate_num > 0)
        line +=
            ", " +
            fixed(static_cast<double>(facts.frame_rate_num) / static_cast<double>(facts.frame_rate_den), 2) +
            " pictures a second";
    return line;
}

std::string counts_text(const marks::Analysis& analysis) {
    const auto heard = static_cast<std::size_t>(
        std::count_if(analysis.breaths.begin(), analysis.breaths.end(), [](const marks::Breath& breath) {
            return breath.evidence_kind == marks::BreathEvidence::heard;
        }));
    return counted(analysis.phrases.size(), "phrase") + ", " + counted(analysis.breaths.size(), "breath") +
           " (" + std::to_string(heard) + " heard, " + std::to_string(analysis.breaths.size() - heard) +
           " inferred), " + counted(analysis.switches.size(), "register switch", "register switches") +
           " and " + counted(analysis.notes.size(), "note");
}

std::string found_text(const marks::Analysis& analysis) {
    std::string text = analysis.setting == voice::Setting::alone ? "Voice alone" : "Accompanied voice";
    text += ", A4 = " + fixed(analysis.tuning.value(), 1) + " Hz";
    if (analysis.loudness.integrated)
        text += ", " + fixed(analysis.loudness.integrated->value(), 1) + " LUFS";
    text += ".\nFound " + counts_text(analysis) + ".\n";
    if (analysis.one_register && !analysis.notes.empty())
        text += "The evidence doesn't split into two registers.\n";
    return text;
}

} // namespace luft::cli
