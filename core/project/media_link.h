// Recordings outside the project file: how the link is written, and how it is followed.
#pragma once

#include "base/bytes.h"
#include "base/progress.h"
#include "project/model.h"

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace luft::project {

/// How far a moved recording is looked for: folders below the one given, and entries looked at. Bounds on the
/// time a search takes; our choice, no source.
inline constexpr int kSearchDepth = 4;
inline constexpr int kSearchEntries = 50'000;

/// The media's path seen from `folder`, with '/' between parts. Throws Error(bad_request) for a name that
/// isn't valid UTF-8, since it couldn't be written down.
std::string link_text(const std::filesystem::path& media, const std::filesystem::path& folder);

/// Opens the linked file: where the link says, else wherever a file of that size and fingerprint lies in
/// `folder` or `search` (folders or files). The file at its linked place is taken by its size alone unless
/// `verify`; one found elsewhere always by its fingerprint. Throws Error(changed) when something else lies at
/// the linked place, Error(not_found) when nothing does.
std::unique_ptr<ByteSource> open_linked(const MediaLink& link, const std::filesystem::path& folder,
                                        bool verify, const std::vector<std::filesystem::path>& search,
                                        const Progress& progress = {});

} // namespace luft::project
