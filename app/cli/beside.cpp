// luftpause beside: technique profiles of several performances side by side.
#include "cli/sources.h"
#include "cli/verbs.h"
#include "export/beside_html.h"
#include "export/beside_json.h"
#include "export/beside_text.h"
#include "files/formats.h"

#include <algorithm>

namespace luft::cli {
namespace {

using AsText = std::string (*)(const profile::Beside&);

struct Options {
    std::string project, out;
    std::vector<std::string> labels;
    AsText format = exports::beside_text;
    bool json = false;
};

std::vector<project::Performance> chosen(const Options& options, const project::Project& project) {
    if (options.labels.empty()) return project.performances();
    std::vector<project::Performance> performances;
    for (const std::string& label : options.labels) {
        if (std::ranges::count(options.labels, label) > 1) throw UsageError("'" + label + "' is named twice");
        performances.push_back(project.performance(label));
    }
    return performances;
}

void work(const Options& options, Frame& frame) {
    const project::Project project = open_to_read(options.project);
    const auto performances = chosen(options, project);
    if (performances.size() < 2)
        throw Error(Fault::bad_request, "There is nothing to set side by side.",
                    "It takes two performances and more.");
    std::vector<profile::Profile> profiles;
    profiles.reserve(performances.size());
    for (const project::Performance& performance : performances)
        profiles.push_back(files::Material(project, performance).profile());
    const AsText format = options.json ? exports::beside_json : options.format;
    frame.deliver(format(profile::set_beside(profiles)), options.out, files_of(project));
}

} // namespace

void offer_beside(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "beside", "Set the profiles of several performances side by side",
                          "luftpause beside mill.luft\n"
                          "luftpause beside mill.luft march may june --as html --out months.html");
    project_argument(verb, options->project);
    labels_argument(verb, options->labels, "Which performances, in this order; all of them unless named");
    choice_option<AsText>(
        verb, "--as", options->format,
        {{"text", exports::beside_text}, {"json", exports::beside_json}, {"html", exports::beside_html}},
        "What to write; text unless given");
    flag(verb, "--json", options->json, "The same as --as json");
    out_option(verb, options->out);
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
