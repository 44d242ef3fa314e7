#include "files/write_all.h"

#include "base/write_file.h"
#include "files/sources.h"
#include "files/stems.h"

#include <algorithm>

namespace luft::files {
namespace {

/// How much longer than the others a format takes, roughly: progress goes by it.
double weight(const Format& format) {
    return format.key == "guide" ? 20 : 1;
}

} // namespace

void Written::add(Written other) {
    std::ranges::move(other.files, std::back_inserter(files));
    std::ranges::move(other.notes, std::back_inserter(notes));
    std::ranges::move(other.faults, std::back_inserter(faults));
}

std::string Written::missing() const {
    if (faults.empty()) return {};
    std::string names;
    for (const Fault& fault : faults)
        names += (names.empty() ? "" : ", ") + std::string(fault.format);
    return "Not made: " + names + ". " + faults.front().error.what();
}

void spare(const std::filesystem::path& out, const std::vector<std::filesystem::path>& sources) {
    for (const auto& source : sources) {
        std::error_code ignored;
        const bool same = std::filesystem::equivalent(source, out, ignored) ||
                          std::filesystem::equivalent(source, out.string() + ".luft-part", ignored);
        if (same)
            throw Error(Fault::bad_request, "'" + out.string() + "' is what the result is made from.",
                        "Give it another name.");
    }
}

std::vector<std::filesystem::path> write(const Format& format, Material& material,
                                         const std::filesystem::path& out, const Progress& progress) {
    spare(out, files_of(material.project()));
    if (const auto* folder = std::get_if<AsFolder>(&format.make))
        return folder->write(material, out, progress);
    if (const auto* text = std::get_if<AsText>(&format.make))
        write_file(out, (*text)(material));
    else
        std::get<AsFile>(format.make).write(material, out, progress);
    return {out};
}

Written write_all(const project::Project& project, const std::vector<project::Performance>& performances,
                  const std::filesystem::path& folder, const Progress& progress,
                  const std::function<bool(const Format&)>& wanted) {
    std::error_code refused;
    std::filesystem::create_directories(folder, refused);
    if (refused)
        throw Error(Fault::cannot_write,
                    "'" + folder.string() + "' can't be made: " + refused.message() + ".");
    double whole = 0, done = 0;
    for (const Format& format : formats())
        if (!wanted || wanted(format)) whole += weight(format) * static_cast<double>(performances.size());
    Written written;
    Stems stems; // a label may be no file name, and two may become the same one
    for (const project::Performance& performance : performances) {
        const std::string stem = stems.take(file_stem(performance.label));
        Material material(project, performance);
        for (const Format& format : formats()) {
            if (wanted && !wanted(format)) continue;
            progress.step(done / whole, format.key);
            const Progress part = progress.part(done / whole, (done + weight(format)) / whole);
            try {
                const auto files =
                    write(format, material, folder / (stem + "-" + std::string(format.ending)), part);
                std::ranges::copy(files, std::back_inserter(written.files));
                std::ranges::copy(material.take_notes(), std::back_inserter(written.notes));
            } catch (const Error& error) { // it may want what isn't there, a recording say
                written.faults.push_back({format.key, error});
            }
            done += weight(format);
        }
    }
    return written;
}

} // namespace luft::files
