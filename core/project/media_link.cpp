#include "project/media_link.h"

#include "base/error.h"
#include "base/fingerprint.h"
#include "base/text.h"

namespace luft::project {
namespace {

namespace fs = std::filesystem;

/// The folder without links in it, so that ".." in a relative path leads where it says; the last name is
/// kept.
fs::path real_place(const fs::path& file) {
    const fs::path absolute = fs::absolute(file);
    return fs::weakly_canonical(absolute.parent_path()) / absolute.filename();
}

bool has_size(const fs::path& file, std::int64_t size) {
    std::error_code failure;
    if (!fs::is_regular_file(file, failure)) return false;
    const auto actual = fs::file_size(file, failure);
    return !failure && static_cast<std::int64_t>(actual) == size;
}

bool has_fingerprint(const fs::path& file, const std::string& expected, const Progress& progress) {
    try {
        const auto bytes = open_file(file);
        return fingerprint(*bytes, progress) == expected;
    } catch (const Error&) {
        return false; // not to be opened: not the recording that we look for
    }
}

bool is_it(const fs::path& file, const MediaLink& link, const Progress& progress) {
    return has_size(file, link.size) && has_fingerprint(file, link.fingerprint, progress);
}

std::unique_ptr<ByteSource> look_in(const fs::path& place, const MediaLink& link, const Progress& progress) {
    if (is_it(place, link, progress)) return open_file(place);
    std::error_code failure;
    fs::recursive_directory_iterator entry(place, fs::directory_options::skip_permission_denied, failure);
    for (int seen = 0; !failure && entry != fs::recursive_directory_iterator() && seen < kSearchEntries;
         ++seen) {
        if (entry.depth() >= kSearchDepth) entry.disable_recursion_pending();
        progress.step(0, "looking for the recording");
        if (is_it(entry->path(), link, progress)) return open_file(entry->path());
        entry.increment(failure);
    }
    return nullptr;
}

} // namespace

std::string link_text(const fs::path& media, const fs::path& folder) {
    const fs::path relative = real_place(media).lexically_relative(fs::weakly_canonical(folder));
    std::string text = relative.empty() ? real_place(media).generic_string() : relative.generic_string();
    if (!is_utf8(text))
        throw Error(Fault::bad_request, "The path '" + valid_utf8(text) + "' isn't valid text (UTF-8).",
                    "Rename the file or its folder, or carry the recording inside the project.");
    return text;
}

std::unique_ptr<ByteSource> open_linked(const MediaLink& link, const fs::path& folder, bool verify,
                                        const std::vector<fs::path>& search, const Progress& progress) {
    const fs::path linked = fs::weakly_canonical(folder) / link.path;
    if (has_size(linked, link.size) && (!verify || has_fingerprint(linked, link.fingerprint, progress)))
        return open_file(linked);
    if (auto found = look_in(folder, link, progress)) return found;
    for (const fs::path& place : search)
        if (auto found = look_in(place, link, progress)) return found;
    std::error_code ignored;
    if (fs::exists(linked, ignored))
        throw Error(Fault::changed,
                    "'" + link.path + "' is not the recording that was added: its contents have changed.",
                    "Put the original file back, or add the changed one as another performance.");
    throw Error(Fault::not_found, "The recording '" + link.path + "' isn't where it was.",
                "Put it back, or tell where it is now.");
}

} // namespace luft::project
