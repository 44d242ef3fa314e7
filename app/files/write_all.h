// Formats written to where they are wanted: one, or all of them into a folder.
#pragma once

#include "base/error.h"
#include "files/formats.h"

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace luft::files {

/// Throws Error(bad_request) when `out` is one of `sources`, or what would be written on the way to it is.
void spare(const std::filesystem::path& out, const std::vector<std::filesystem::path>& sources);

/// Writes a format under that name, whole or not at all. Returns the files written; a folder of none is
/// allowed. Throws Error(bad_request) when `out` is the project or a recording, and as the format itself.
std::vector<std::filesystem::path> write(const Format& format, Material& material,
                                         const std::filesystem::path& out, const Progress& progress);

struct Written {
    std::vector<std::filesystem::path> files;
    std::vector<std::string> notes; ///< what a format has to say beside its file: sentences
    struct Fault {
        std::string_view format; ///< its key
        Error error;
    };
    std::vector<Fault> faults; ///< formats that couldn't be made; the others were

    /// Appends what another call has written.
    void add(Written other);
    /// A sentence that names them, with the first one's reason; empty when there are none.
    [[nodiscard]] std::string missing() const;
};

/// Every format of these performances into a folder, which is made when it isn't there, as
/// "LABEL-ENDING". Throws Error(cannot_write) when the folder can't be made, Stopped; what was written until
/// then is whole.
Written write_all(const project::Project& project, const std::vector<project::Performance>& performances,
                  const std::filesystem::path& folder, const Progress& progress,
                  const std::function<bool(const Format&)>& wanted = {});

} // namespace luft::files
