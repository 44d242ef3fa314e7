// luftpause check: whether a project file is sound, and its recordings still the same.
#include "base/text.h"
#include "cli/json_text.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "project/rescue.h"

#include <tuple>

namespace luft::cli {
namespace {

struct Options {
    std::string project, rescue;
    bool json = false;
};

/// What is wrong with the recordings, a sentence each.
std::vector<std::string> media_faults(const project::Project& project, const Progress& progress) {
    std::vector<std::string> faults;
    const auto performances = project.performances();
    const auto whole = static_cast<double>(performances.size());
    double done = 0;
    for (const project::Performance& performance : performances) {
        const Progress part = progress.part(done / whole, (done + 1) / whole);
        ++done;
        try {
            std::ignore = project.media(performance, !performance.media.carried, {}, part);
        } catch (const Error& error) {
            faults.push_back("'" + performance.label + "': " + error.what() + " " + error.advice());
        }
    }
    return faults;
}

void save_into_new(const Options& options, Frame& frame) {
    const project::Rescue result = project::rescue(options.project, options.rescue, frame.progress());
    if (options.json) {
        frame.print(json_text({{"saved", result.saved}, {"missing", result.missing}}));
        return;
    }
    std::string text = "Saved into '" + options.rescue + "': " + result.saved + ".\n";
    for (const std::string& missing : result.missing)
        text += "- " + one_line(missing) + "\n";
    frame.print(result.missing.empty() ? text + "Nothing is missing.\n" : text);
}

void work(const Options& options, Frame& frame) {
    if (!options.rescue.empty()) {
        save_into_new(options, frame);
        return;
    }
    const project::Project project = open_to_read(options.project);
    const Progress progress = frame.progress();
    std::vector<std::string> faults;
    for (const project::Damage& damage : project.check(progress.part(0, 0.5)))
        faults.push_back(damage.what);
    for (const std::string& fault : media_faults(project, progress.part(0.5, 1)))
        faults.push_back(fault);

    if (options.json) {
        frame.print(json_text({{"sound", faults.empty()}, {"faults", faults}}));
    } else if (faults.empty()) {
        frame.print("Sound: the project and its " + counted(project.performances().size(), "recording") +
                    ".\n");
    } else {
        std::string text;
        for (const std::string& fault : faults)
            text += "- " + one_line(fault) + "\n";
        frame.print(text);
    }
    if (!faults.empty())
        throw Error(Fault::unreadable,
                    "'" + options.project + "' has " + counted(faults.size(), "fault") + ".");
}

} // namespace

void offer_check(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "check", "Check the project file for damage and its recordings for change",
                          "luftpause check mill.luft\n"
                          "luftpause check mill.luft --rescue mill-saved.luft");
    project_argument(verb, options->project);
    string_option(verb, "--rescue", options->rescue, "NEW.luft",
                  "Save all that can be read of a damaged project into a new one");
    flag(verb, "--json", options->json, "Print as JSON");
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
