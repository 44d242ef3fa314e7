// Every file that two compared performances can be written to, by name.
#pragma once

#include "compare/comparison.h"
#include "files/write_all.h"

#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>

namespace luft::files {

/// What they are made from.
class ComparisonMaterial {
  public:
    ComparisonMaterial(const project::Project& project, compare::Comparison comparison)
        : project_(project), comparison_(std::move(comparison)) {}

    [[nodiscard]] const project::Project& project() const { return project_; }
    [[nodiscard]] const compare::Comparison& comparison() const { return comparison_; }
    /// What is drawn of each; gathered when it is first asked for.
    const profile::Source& source_a();
    const profile::Source& source_b();

  private:
    const project::Project& project_;
    compare::Comparison comparison_;
    std::optional<profile::Source> a_, b_;
};

struct ComparisonFormat {
    /// The whole file as a text.
    using AsText = std::string (*)(ComparisonMaterial&);
    /// A file that is no text: written whole under the name, or not at all.
    using AsFile = void (*)(ComparisonMaterial&, const std::filesystem::path&, const Progress&);

    std::string_view key;    ///< "compare-html"
    std::string_view ending; ///< of the file's name after the two labels: "compare.html"
    std::string_view help;
    std::variant<AsText, AsFile> make;
};

std::span<const ComparisonFormat> comparison_formats();

/// By the file's ending. Throws Error(bad_request) for one that none of them has.
const ComparisonFormat& comparison_format_for(const std::filesystem::path& file);

/// Writes one under that name, whole or not at all. Throws Error(bad_request) when `out` is the project or a
/// recording, and as the format itself.
void write(const ComparisonFormat& format, ComparisonMaterial& material, const std::filesystem::path& out,
           const Progress& progress);

/// Every one of these formats of each later performance against the first, with the project's pins, into a
/// folder that is there, as "FIRST-LATER-ENDING". Nothing unless there are two performances and all have been
/// listened to. Where a recording isn't at hand, goes by the singing alone and notes it. Throws Stopped; what
/// was written until then is whole.
Written write_comparisons(const project::Project& project, const std::filesystem::path& folder,
                          const Progress& progress);

} // namespace luft::files
