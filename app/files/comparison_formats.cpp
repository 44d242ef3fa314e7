#include "files/comparison_formats.h"

#include "base/write_file.h"
#include "export/compare_html.h"
#include "export/compare_json.h"
#include "export/compare_pdf.h"
#include "export/compare_text.h"
#include "files/compared.h"
#include "files/sources.h"
#include "files/stems.h"
#include "profile/gather.h"

#include <algorithm>
#include <array>

namespace luft::files {
namespace {

constexpr std::array kFormats = {
    ComparisonFormat{"compare-html", "compare.html",
                     "two performances compared: a page to talk from, then pictures and tables",
                     [](ComparisonMaterial& m) {
                         return exports::compare_html(m.comparison(), m.source_a(), m.source_b());
                     }},
    ComparisonFormat{"compare-pdf", "compare.pdf", "the same as pages of a PDF",
                     [](ComparisonMaterial& m, const std::filesystem::path& file, const Progress& progress) {
                         exports::compare_pdf(m.comparison(), m.source_a(), m.source_b(), file, progress);
                     }},
    ComparisonFormat{"compare-text", "compare.txt", "the same as plain text",
                     [](ComparisonMaterial& m) { return exports::compare_text(m.comparison()); }},
    ComparisonFormat{"compare-json", "compare.json", "the same for other programs, with every pair of notes",
                     [](ComparisonMaterial& m) { return exports::compare_json(m.comparison()); }},
};

constexpr double kComparing = 0.8; ///< share of the time that comparing takes beside writing, roughly

/// What sounds beside the singing is left out where a recording can't be heard; `before` has heard some of
/// it.
compare::Comparison compare_as_can_be(const project::Project& project, const project::Performance& a,
                                      const project::Performance& b, const compare::Comparison* before,
                                      Written& written, const Progress& progress) {
    const compare::AlignOptions pins{.pins = pins_of(project, a, b)};
    try {
        return compare_performances(project, a, b, true, pins, progress, before);
    } catch (const Error& error) {
        auto comparison = compare_performances(project, a, b, false, pins, progress);
        written.notes.push_back("'" + a.label + "' and '" + b.label +
                                "' were compared by the singing alone: " + error.what());
        return comparison;
    }
}

} // namespace

const profile::Source& ComparisonMaterial::source_a() {
    if (!a_) a_ = profile::gather(project_, comparison_.a);
    return *a_;
}

const profile::Source& ComparisonMaterial::source_b() {
    if (!b_) b_ = profile::gather(project_, comparison_.b);
    return *b_;
}

std::span<const ComparisonFormat> comparison_formats() {
    return kFormats;
}

const ComparisonFormat& comparison_format_for(const std::filesystem::path& file) {
    const std::string ending = file.extension().string();
    const auto found = std::ranges::find_if(kFormats, [&](const ComparisonFormat& format) {
        return std::filesystem::path(format.ending).extension() == ending;
    });
    if (ending.empty() || found == kFormats.end())
        throw Error(Fault::bad_request, "A report can't be written to '" + file.filename().string() + "'.",
                    "Let the name end in .html, .pdf, .txt or .json.");
    return *found;
}

void write(const ComparisonFormat& format, ComparisonMaterial& material, const std::filesystem::path& out,
           const Progress& progress) {
    spare(out, files_of(material.project()));
    if (const auto* text = std::get_if<ComparisonFormat::AsText>(&format.make))
        write_file(out, (*text)(material));
    else
        std::get<ComparisonFormat::AsFile>(format.make)(material, out, progress);
}

Written write_comparisons(const project::Project& project, const std::filesystem::path& folder,
                          const Progress& progress) {
    const auto performances = project.performances();
    Written written;
    if (performances.size() < 2 || std::ranges::any_of(performances, [&](const auto& performance) {
            return !project.listening(performance.id);
        }))
        return written;
    Stems stems;
    std::optional<compare::Comparison> before;
    const double pairs = static_cast<double>(performances.size() - 1);
    for (std::size_t i = 1; i < performances.size(); ++i) {
        const double from = static_cast<double>(i - 1) / pairs, to = static_cast<double>(i) / pairs;
        const Progress part = progress.part(from, to);
        const std::string stem =
            stems.take(file_stem(performances[0].label) + "-" + file_stem(performances[i].label));
        try {
            auto comparison =
                compare_as_can_be(project, performances[0], performances[i], before ? &*before : nullptr,
                                  written, part.part(0, kComparing));
            before = comparison;
            ComparisonMaterial material(project, std::move(comparison));
            for (const ComparisonFormat& format : kFormats) {
                const auto file = folder / (stem + "-" + std::string(format.ending));
                try {
                    write(format, material, file, part.part(kComparing, 1));
                    written.files.push_back(file);
                } catch (const Error& error) {
                    written.faults.push_back({format.key, error});
                }
            }
        } catch (const Error& error) {
            written.faults.push_back({kFormats.front().key, error});
        }
    }
    return written;
}

} // namespace luft::files
