// Every file that a performance can be written to, by name.
#pragma once

#include "base/progress.h"
#include "profile/profile.h"
#include "project/project.h"
#include "script/cue_sheet.h"

#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace luft::files {

/// What the formats are made from, each part gathered when it is first asked for.
class Material {
  public:
    Material(const project::Project& project, project::Performance performance)
        : project_(project), performance_(std::move(performance)) {}

    [[nodiscard]] const project::Project& project() const { return project_; }
    [[nodiscard]] const project::Performance& performance() const { return performance_; }
    const profile::Source& profile_source();
    const profile::Profile& profile();
    const script::Source& script_source();
    const script::CueSheet& cue_sheet();

    /// Something that a format has to say beside its file; one sentence.
    void note(std::string sentence) { notes_.push_back(std::move(sentence)); }
    /// What was noted since.
    std::vector<std::string> take_notes() { return std::exchange(notes_, {}); }

  private:
    const project::Project& project_;
    project::Performance performance_;
    std::optional<profile::Source> profile_source_;
    std::optional<profile::Profile> profile_;
    std::optional<script::Source> script_source_;
    std::optional<script::CueSheet> cue_sheet_;
    std::vector<std::string> notes_;
};

/// The whole file as a text.
using AsText = std::string (*)(Material&);
/// A file that is no text: written whole under the name, or not at all.
struct AsFile {
    void (*write)(Material&, const std::filesystem::path& file, const Progress&);
};
/// Several files in a folder, which is made when it isn't there. Returns them.
struct AsFolder {
    std::vector<std::filesystem::path> (*write)(Material&, const std::filesystem::path& folder,
                                                const Progress&);
    std::string_view none = "There was nothing to write."; ///< said to who asked for it and got no file
};

struct Format {
    std::string_view key;    ///< as `--as` takes it: "cues-html"
    std::string_view ending; ///< of the file's or folder's name after the performance's label: "cues.html"
    std::string_view help;
    std::variant<AsText, AsFile, AsFolder> make;
};

std::span<const Format> formats();

/// The performance's label as the start of a file's name: nothing in it leads out of the folder, or shows in
/// another order than it is; 80 bytes at most.
std::string file_stem(std::string_view label);

} // namespace luft::files
