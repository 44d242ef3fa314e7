#include "cli/hear.h"

#include "base/error.h"
#include "base/text.h"
#include "cli/sources.h"
#include "cli/table.h"

#include <algorithm>
#include <utility>

namespace luft::cli {

void listening_options(Verb& verb, Listening& into) {
    choice_option<marks::Accompaniment>(verb, "--voice", into.accompaniment,
                                        {{"auto", marks::Accompaniment::find_out},
                                         {"alone", marks::Accompaniment::alone},
                                         {"accompanied", marks::Accompaniment::accompanied}},
                                        "Whether other instruments sound along; found out unless given");
    flag(verb, "--partial", into.partial,
         "Take a recording that has lost its end as far as it goes; those in a project always are");
}

media::Facts probe(std::unique_ptr<ByteSource> bytes, bool partial) {
    const std::string name = bytes->name();
    media::Facts facts = media::probe(std::move(bytes));
    if (facts.cut_off_from && !partial)
        throw Error(Fault::unreadable,
                    "'" + name + "' is cut off: it announces " + clock_text(*facts.cut_off_from) +
                        " and ends at " + clock_text(facts.duration) + ".",
                    "Copy it again from where it came, or take it as far as it goes with --partial.");
    return facts;
}

Heard hear(const std::function<std::unique_ptr<ByteSource>()>& open, const Listening& options,
           const Progress& progress) {
    progress.step(0, "opening the recording");
    const media::Facts facts = probe(open(), options.partial);
    const auto sound = media::open_sound(open());
    return {facts_of(facts), marks::listen(*sound, {options.accompaniment}, progress)};
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

std::string found_text(const marks::Analysis& analysis) {
    const auto heard = static_cast<std::size_t>(
        std::count_if(analysis.breaths.begin(), analysis.breaths.end(), [](const marks::Breath& breath) {
            return breath.evidence_kind == marks::BreathEvidence::heard;
        }));
    std::string text = analysis.setting == voice::Setting::alone ? "Voice alone" : "Accompanied voice";
    text += ", A4 = " + fixed(analysis.tuning.value(), 1) + " Hz";
    if (analysis.loudness.integrated)
        text += ", " + fixed(analysis.loudness.integrated->value(), 1) + " LUFS";
    text += ".\nFound " + counted(analysis.phrases.size(), "phrase") + ", " +
            counted(analysis.breaths.size(), "breath") + " (" + std::to_string(heard) + " heard, " +
            std::to_string(analysis.breaths.size() - heard) + " inferred), " +
            counted(analysis.switches.size(), "register switch", "register switches") + " and " +
            counted(analysis.notes.size(), "note") + ".\n";
    if (analysis.one_register && !analysis.notes.empty())
        text += "The evidence doesn't split into two registers.\n";
    return text;
}

} // namespace luft::cli
