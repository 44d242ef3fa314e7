#include "cli/sources.h"

#include "base/bytes.h"

#include <array>
#include <cstring>

namespace luft::cli {

project::Project open_to_read(const std::string& file) {
    return project::Project::open(file, project::Access::read);
}

project::Project open_to_edit(const std::string& file) {
    return project::Project::open(file, project::Access::edit);
}

bool looks_like_project(const std::filesystem::path& file) {
    if (file.extension() == ".luft") return true;
    constexpr std::string_view kSqlite = "SQLite format 3"; // the first bytes of every SQLite database
    std::array<char, kSqlite.size()> first{};
    try {
        open_file(file)->read_at(0, std::as_writable_bytes(std::span(first)));
    } catch (const Error&) {
        return false; // whoever opens it as media says why it can't be read
    }
    return std::string_view(first.data(), first.size()) == kSqlite;
}

} // namespace luft::cli
