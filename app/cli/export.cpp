// luftpause export: one format into a file, or every format into a folder.
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "cli/write_format.h"
#include "files/comparison_formats.h"
#include "files/write_all.h"

#include <algorithm>

namespace luft::cli {
namespace {

struct Options {
    std::string project, performance, as, out, folder;
};

void one(const Options& options, Frame& frame) {
    const Format& format = format_of(options.as);
    const project::Project project = open_to_read(options.project);
    Material material(project, project.performance(options.performance));
    const auto files = write_format(format, material, options.out, frame, frame.progress());
    if (const auto* folder = std::get_if<files::AsFolder>(&format.make); folder != nullptr && files.empty())
        frame.note(folder->none);
}

void all(const Options& options, Frame& frame) {
    const project::Project project = open_to_read(options.project);
    std::vector<project::Performance> performances = project.performances();
    if (!options.performance.empty()) performances = {project.performance(options.performance)};
    if (performances.empty())
        throw Error(Fault::bad_request, "There is no performance in this project yet.",
                    "Run 'luftpause add' first.");
    const Progress progress = frame.progress();
    files::Written written = files::write_all(project, performances, options.folder, progress.part(0, 0.9));
    if (options.performance.empty())
        written.add(files::write_comparisons(project, options.folder, progress.part(0.9, 1)));
    std::string text;
    for (const auto& file : written.files)
        text += one_line(file.string()) + "\n";
    frame.print(text);
    for (const std::string& sentence : written.notes)
        frame.note(sentence);
    if (!written.faults.empty()) {
        const Error& first = written.faults.front().error;
        throw Error(first.fault(), written.missing(), first.advice());
    }
}

void work(const Options& options, Frame& frame) {
    if (!options.folder.empty() && (!options.as.empty() || !options.out.empty()))
        throw UsageError("give --all FOLDER, or --as FORMAT with --out FILE");
    if (options.folder.empty() && options.as.empty())
        throw UsageError("say what to export: --as FORMAT --out FILE, or --all FOLDER");
    options.folder.empty() ? one(options, frame) : all(options, frame);
}

std::string list_of_formats() {
    std::string text = "\nFormats:\n";
    for (const Format& format : formats()) {
        const std::string key(format.key);
        text += "  " + key + std::string(16 - std::min<std::size_t>(key.size(), 15), ' ') +
                std::string(format.help) + "\n";
    }
    return text;
}

} // namespace

void offer_export(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "export", "Write a performance's files: one format, or all into a folder",
                          "luftpause export mill.luft --performance A --as captions --out mill.vtt\n"
                          "luftpause export mill.luft --all handout\n" +
                              list_of_formats());
    project_argument(verb, options->project);
    performance_option(verb, options->performance);
    string_option(verb, "--as", options->as, "FORMAT", "Which format");
    out_option(verb, options->out);
    string_option(
        verb, "--all", options->folder, "FOLDER",
        "Write every format of every performance into this folder, and each one compared with the first");
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
