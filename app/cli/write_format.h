// Any format to where it is wanted.
#pragma once

#include "cli/frame.h"
#include "files/formats.h"

#include <filesystem>
#include <string>
#include <vector>

namespace luft::cli {

using files::Format;
using files::formats;
using files::Material;

/// Throws UsageError, naming those that there are.
const Format& format_of(const std::string& key);

/// Writes a format under the name `out`, or prints it when `out` is empty and it is a text. Returns the files
/// that it has written. Throws UsageError for other formats without a name, and as files::write.
std::vector<std::filesystem::path> write_format(const Format& format, Material& material,
                                                const std::string& out, Frame& frame,
                                                const Progress& progress = {});

} // namespace luft::cli
