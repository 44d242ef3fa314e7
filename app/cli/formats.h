// Every file that a performance can be written to, by name.
#pragma once

#include "profile/profile.h"
#include "project/project.h"
#include "script/cue_sheet.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace luft::cli {

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

  private:
    const project::Project& project_;
    project::Performance performance_;
    std::optional<profile::Source> profile_source_;
    std::optional<profile::Profile> profile_;
    std::optional<script::Source> script_source_;
    std::optional<script::CueSheet> cue_sheet_;
};

struct Format {
    std::string_view key;    ///< as `--as` takes it: "cues-html"
    std::string_view ending; ///< of the file's name after the performance's label: "cues.html"
    std::string_view help;
    std::string (*render)(Material&);
};

std::span<const Format> formats();

/// Throws UsageError, naming those that there are.
const Format& format_of(const std::string& key);

/// The performance's label as the start of a file's name: nothing in it leads out of the folder.
std::string file_stem(std::string_view label);

} // namespace luft::cli
