// luftpause add: a performance into a project: probed, listened to, stored, with moments proposed.
#include "base/text.h"
#include "cli/hear.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"

namespace luft::cli {
namespace {

struct Options {
    std::string project, media;
    std::optional<std::string> label, performer, source, permission;
    bool carry = false;
    bool no_listen = false;
    intake::Listening listening;
};

void work(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    intake::Recording recording;
    recording.media = options.media;
    recording.details.label = options.label.value_or("");
    recording.details.performer = options.performer.value_or("");
    recording.details.source = options.source.value_or("");
    recording.details.permission = options.permission.value_or("");
    recording.carry = options.carry;
    recording.listen = !options.no_listen;
    recording.listening = options.listening;
    recording.remedy = kPartialRemedy;
    const auto added = intake::add(project, recording, frame.progress());
    std::string text =
        "Added '" + one_line(added.performance.label) + "': " + facts_line(added.performance.facts) + ".\n";
    if (added.heard)
        text += found_text(added.heard->analysis) + "Proposed " +
                counted(static_cast<std::size_t>(added.proposed), "moment") +
                ". Next: luftpause moment PROJECT list\n";
    else
        text += "Not listened to yet. Next: luftpause listen PROJECT\n";
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
