// luftpause listen: the whole analysis of recordings, or of performances in a project.
#include "base/in_parallel.h"
#include "base/write_file.h"
#include "cli/listen_several.h"
#include "cli/sources.h"
#include "cli/verbs.h"
#include "export/analysis_json.h"
#include "files/write_all.h"

#include <algorithm>

namespace luft::cli {
namespace {

/// More at once than any machine here has cores; only a bound. Our choice, no source.
constexpr std::int64_t kMostJobs = 256;

struct Options {
    std::vector<std::string> inputs, performances;
    std::string out, folder;
    bool all = false;
    std::int64_t jobs = cores();
    intake::Listening listening;

    [[nodiscard]] Several several() const { return {listening, static_cast<int>(jobs), folder}; }
};

void listen_to_file(const Options& options, Frame& frame) {
    const std::string& input = options.inputs.front();
    const intake::Heard heard =
        intake::hear([&] { return open_file(input); }, options.listening, kPartialRemedy, frame.progress());
    frame.deliver(exports::analysis_json(heard.analysis, heard.facts), options.out, {input});
}

void listen_to_project(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.inputs.front());
    if (options.all && !options.performances.empty()) throw UsageError("give --performance or --all");
    std::vector<project::Performance> chosen;
    for (const std::string& label : options.performances) {
        const project::Performance one = project.performance(label);
        const bool again = std::ranges::any_of(chosen, [&](const auto& other) { return other.id == one.id; });
        if (!again) chosen.push_back(one);
    }
    if (options.all)
        chosen = project.performances();
    else if (chosen.empty())
        chosen = {project.performance({})};
    if (chosen.empty())
        throw Error(Fault::not_found, "The project has no performance yet.", "Add a recording first.");
    if (options.all || chosen.size() > 1 || !options.folder.empty()) {
        if (!options.out.empty())
            throw UsageError("--out is for one performance; for several give --into FOLDER");
        return listen_again(project, chosen, options.several(), frame);
    }
    if (!options.out.empty()) files::spare(options.out, files_of(project));
    const auto heard =
        intake::listen_again(project, chosen.front(), options.listening.accompaniment, frame.progress())
            .heard;
    if (options.out.empty()) return frame.print(found_text(heard->analysis));
    // It is stored by now, so that it is too late to stop.
    write_file(options.out, exports::analysis_json(heard->analysis, heard->facts));
}

void work(const Options& options, Frame& frame) {
    const auto& inputs = options.inputs;
    if (!options.out.empty() && !options.folder.empty()) throw UsageError("give --out FILE or --into FOLDER");
    if (std::ranges::any_of(inputs, [](const std::string& input) { return looks_like_project(input); })) {
        if (inputs.size() > 1) throw UsageError("give recordings, or one project");
        return listen_to_project(options, frame);
    }
    if (!options.performances.empty() || options.all)
        throw UsageError("--performance and --all are for projects, and this is a recording");
    if (!options.folder.empty()) return listen_to_files(inputs, options.several(), frame);
    if (inputs.size() > 1) throw UsageError("for several recordings give --into FOLDER");
    listen_to_file(options, frame);
}

} // namespace

void offer_listen(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(
        app, "listen",
        "Print the whole analysis of a recording as JSON, or listen to a project's performances again",
        "luftpause listen cover.mp4 --out cover.json\n"
        "luftpause listen monday.wav tuesday.mp4 friday.flac --into heard\n"
        "luftpause listen mill.luft --performance A --voice accompanied\n"
        "luftpause listen mill.luft --all");
    arguments(verb, "MEDIA", options->inputs,
              "Recordings; or a project, where listening again keeps what the coach did");
    repeated_option(verb, "--performance", options->performances, "LABEL",
                    "Which performance; needed when there are several; may be given several times");
    flag(verb, "--all", options->all, "Every performance of the project");
    listening_options(verb, options->listening);
    out_option(verb, options->out);
    string_option(verb, "--into", options->folder, "FOLDER",
                  "Write the analysis of each recording into this folder, as NAME.json");
    whole_option(verb, "--jobs", options->jobs, 1, kMostJobs,
                 "How many recordings at once; as many as the machine has cores unless given");
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
