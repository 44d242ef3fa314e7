#include "files/guide_file.h"

#include "profile/gather.h"
#include "script/others.h"
#include "script/voices.h"

namespace luft::files {

guide::Report write_guide_file(Material& material, const std::filesystem::path& file,
                               const guide::Options& options, bool voices, const Progress& progress) {
    const project::Project& project = material.project();
    const auto open = [&] { return project.media(material.performance(), false, {}, progress); };
    std::vector<guide::Quoted> quoted;
    for (const script::QuotedOther& one : material.cue_sheet().others) {
        const auto& other = script::other_of(material.script_source(), one.performance)->performance;
        quoted.push_back({other.id, [&] { return project.media(other, false, {}, progress); },
                          [&project, &other] { return profile::gather(project, other); }});
    }
    const guide::Material made_of{.source = material.script_source(),
                                  .sheet = material.cue_sheet(),
                                  .song = material.profile_source(),
                                  .open_recording = open,
                                  .voices = voices ? script::voice_folder(project.file()) : "",
                                  .quoted = std::move(quoted)};
    guide::Report report = guide::write_guide(made_of, file, options, progress);
    for (const std::string& sentence : report.not_used)
        material.note(sentence);
    return report;
}

} // namespace luft::files
