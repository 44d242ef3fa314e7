// luftpause add: a performance into a project: probed, listened to, stored, with moments proposed.
#include "cli/hear.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "profile/propose.h"

#include <algorithm>

namespace luft::cli {
namespace {

struct Options {
    std::string project, media;
    std::optional<std::string> label, performer, source, permission;
    bool carry = false;
    bool no_listen = false;
    Listening listening;
};

/// Said before the listening, not after it.
void refuse_second(const project::Project& project, const std::optional<std::string>& label) {
    const auto there = project.performances();
    if (label &&
        std::any_of(there.begin(), there.end(), [&](const auto& one) { return one.label == *label; }))
        throw Error(Fault::bad_request, "There is already a performance '" + *label + "' in this project.",
                    "Give --label another name.");
}

void work(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    refuse_second(project, options.label);
    const Progress progress = frame.progress();

    // Everything that can go wrong with the recording goes wrong before the project is touched.
    const auto open = [&] { return open_file(options.media); };
    std::optional<Heard> heard;
    if (!options.no_listen) heard = hear(open, options.listening, progress.part(0, 0.9));
    project::Performance details;
    details.label = options.label.value_or("");
    details.performer = options.performer.value_or("");
    details.source = options.source.value_or("");
    details.permission = options.permission.value_or("");
    details.facts = heard ? heard->facts : facts_of(probe(open(), options.listening.partial));
    if (details.facts.channels == 0)
        throw Error(Fault::unreadable, "'" + options.media + "' has no sound.",
                    "A performance needs a recording that can be heard.");

    const auto id =
        project.add_performance(options.media, options.carry, details, progress.part(heard ? 0.9 : 0, 1));
    const auto all = project.performances();
    const auto added = std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.id == id; });
    std::string text = "Added '" + one_line(added->label) + "': " + facts_line(details.facts) + ".\n";
    if (heard) {
        project.store_listening(id, heard->analysis);
        const int proposed =
            project.propose_moments(id, profile::propose_moments(profile_source(project, *added)));
        text += found_text(heard->analysis) + "Proposed " +
                counted(static_cast<std::size_t>(proposed), "moment") +
                ". Next: luftpause moment PROJECT list\n";
    } else {
        text += "Not listened to yet. Next: luftpause listen PROJECT\n";
    }
    frame.print(text);
}

} // namespace

void offer_add(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(
        app, "add", "Add a recorded performance, listen to it and propose moments",
        "luftpause add mill.luft cover.mp4 --label A --performer 'Mara Velin' --permission 'her own'");
    project_argument(verb, options->project);
    argument(verb, "MEDIA", options->media, "Sound or video file of the performance");
    text_option(verb, "--label", options->label, "Short name of this performance");
    text_option(verb, "--performer", options->performer, "Who sings");
    text_option(verb, "--source", options->source, "Where the recording is from");
    text_option(verb, "--permission", options->permission, "Under which permission it is quoted");
    flag(verb, "--carry", options->carry, "Keep the recording itself inside the project file");
    flag(verb, "--no-listen", options->no_listen, "Only add it; listen later");
    listening_options(verb, options->listening);
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
