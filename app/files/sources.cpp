#include "files/sources.h"

#include "base/error.h"

namespace luft::files {

marks::Analysis stored_analysis(const project::Project& project, const project::Performance& performance) {
    const auto listening = project.listening(performance.id);
    if (!listening)
        throw Error(Fault::bad_request, "'" + performance.label + "' hasn't been listened to yet.",
                    "Run 'luftpause listen' on the project first.");
    marks::Analysis analysis;
    analysis.duration = listening->duration;
    analysis.setting = listening->setting;
    analysis.tuning = listening->tuning;
    analysis.loudness = listening->loudness;
    analysis.one_register = listening->one_register;
    analysis.curves = project.curves(performance.id);
    for (const project::Mark& mark : project.marks(performance.id)) {
        if (const auto* note = std::get_if<marks::Note>(&mark.what)) analysis.notes.push_back(*note);
        if (const auto* breath = std::get_if<marks::Breath>(&mark.what)) analysis.breaths.push_back(*breath);
        if (const auto* phrase = std::get_if<marks::Phrase>(&mark.what)) analysis.phrases.push_back(*phrase);
        if (const auto* change = std::get_if<marks::Switch>(&mark.what)) analysis.switches.push_back(*change);
    }
    return analysis;
}

std::vector<std::filesystem::path> files_of(const project::Project& project) {
    std::vector<std::filesystem::path> files{project.file()};
    for (const project::Performance& performance : project.performances())
        if (!performance.media.carried)
            files.push_back(project.file().parent_path() / performance.media.path);
    return files;
}

} // namespace luft::files
