// Any format to where it is wanted.
#pragma once

#include "cli/formats.h"
#include "cli/frame.h"

#include <filesystem>
#include <string>
#include <vector>

namespace luft::cli {

/// Writes a format under the name `out`, or prints it when `out` is empty and it is a text. Returns the files
/// that it has written. Throws UsageError for other formats without a name, Error(bad_request) when `out` is
/// the project or a recording, and as the format itself.
std::vector<std::filesystem::path> write_format(const Format& format, Material& material,
                                                const std::string& out, Frame& frame,
                                                const Progress& progress = {});

} // namespace luft::cli
