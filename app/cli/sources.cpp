#include "cli/sources.h"

#include "base/bytes.h"

#include <array>
#include <cstring>

namespace luft::cli {

project::Project open_to_read(const std::string& file) {
    return project::Project::open(file, project::Access::read);
}

project::Project open_to_edit(const std::string& file) {
    return project::Project::open(file, project::Access::edit);
}

bool looks_like_project(const std::filesystem::path& file) {
    if (file.extension() == ".luft") return true;
    constexpr std::string_view kSqlite = "SQLite format 3"; // the first bytes of every SQLite database
    std::array<char, kSqlite.size()> first{};
    try {
        open_file(file)->read_at(0, std::as_writable_bytes(std::span(first)));
    } catch (const Error&) {
        return false; // whoever opens it as media says why it can't be read
    }
    return std::string_view(first.data(), first.size()) == kSqlite;
}

project::MediaFacts facts_of(const media::Facts& facts) {
    project::MediaFacts kept;
    kept.duration = facts.duration;
    if (facts.audio) {
        kept.sample_rate_hz = facts.audio->format.rate.per_second;
        kept.channels = static_cast<int>(facts.audio->format.channels.size());
    }
    if (facts.video) {
        kept.has_video = true;
        kept.frame_rate_num = facts.video->frame_rate.num();
        kept.frame_rate_den = facts.video->frame_rate.den();
    }
    return kept;
}

profile::Source profile_source(const project::Project& project, const project::Performance& performance) {
    return {.piece = project.piece(),
            .performance = performance,
            .listening = project.listening(performance.id),
            .curves = project.curves(performance.id),
            .marks = project.marks(performance.id),
            .moments = project.moments(performance.id),
            .vocabulary = project.vocabulary()};
}

script::Source script_source(const project::Project& project, const project::Performance& performance) {
    return {.piece = project.piece(),
            .performance = performance,
            .marks = project.marks(performance.id),
            .moments = project.moments(performance.id),
            .items = project.script(performance.id),
            .settings = project.script_settings(),
            .vocabulary = project.vocabulary()};
}

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

} // namespace luft::cli
