#include "project/file_header.h"

#include "base/error.h"
#include "project/schema.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstddef>
#include <cstring>
#include <string_view>
#include <vector>

namespace luft::project {
namespace {

constexpr std::size_t kHeaderSize = 100;
constexpr std::string_view kMagic{"SQLite format 3\0", 16};
constexpr std::size_t kPageSizeAt = 16;
constexpr std::size_t kPageCountAt = 28;
constexpr std::size_t kUserVersionAt = 60;
constexpr std::size_t kApplicationIdAt = 68;

using Header = std::array<unsigned char, kHeaderSize>;

std::uint32_t big_endian(const Header& header, std::size_t at, std::size_t bytes) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < bytes; ++i)
        value = value << 8 | header[at + i];
    return value;
}

/// Reads the first bytes, as many as there are. Through SQLite's own files, since a file closed by anything
/// else takes from this whole process the locks that an edit in another of its threads holds
/// (sqlite.org/howtocorrupt.html, section 2.2).
std::size_t read_first(const std::filesystem::path& path, Header& into) {
    sqlite3_vfs* system = sqlite3_vfs_find(nullptr);
    std::vector<std::max_align_t> room(static_cast<std::size_t>(system->szOsFile) / sizeof(std::max_align_t) +
                                       1);
    auto* file = reinterpret_cast<sqlite3_file*>(room.data());
    file->pMethods = nullptr;
    // SQLite asks for two NUL after a name, where options could follow.
    const std::string name = path.string() + '\0';
    sqlite3_int64 size = 0;
    int code = system->xOpen(system, name.c_str(), file, SQLITE_OPEN_READONLY | SQLITE_OPEN_MAIN_DB, nullptr);
    const int why = errno;
    if (code == SQLITE_OK) code = file->pMethods->xFileSize(file, &size);
    const auto there = std::min(into.size(), static_cast<std::size_t>(size));
    if (code == SQLITE_OK && there > 0)
        code = file->pMethods->xRead(file, into.data(), static_cast<int>(there), 0);
    if (file->pMethods) file->pMethods->xClose(file);
    if (code != SQLITE_OK)
        throw Error(Fault::unreadable, "'" + path.string() + "' can't be read: " + std::strerror(why) + ".",
                    "Check who may read the file.");
    return there;
}

Header read_header(const std::filesystem::path& file) {
    const std::string name = "'" + file.string() + "'";
    std::error_code failure;
    const auto status = std::filesystem::status(file, failure);
    if (!std::filesystem::exists(status))
        throw Error(Fault::not_found, "There is no project " + name + ".", "Check the path.");
    if (!std::filesystem::is_regular_file(status))
        throw Error(Fault::unreadable, name + " is not a file.", "Give the path of a .luft file.");
    Header header{};
    const std::size_t there = read_first(file, header);
    if (there == 0) throw Error(Fault::unreadable, name + " is empty.", "Give the path of a .luft file.");
    if (there < header.size() || std::memcmp(header.data(), kMagic.data(), kMagic.size()) != 0)
        throw Error(Fault::unreadable, name + " is not a project.", "Choose a file that Luftpause has made.");
    return header;
}

} // namespace

std::filesystem::path place_of(const std::filesystem::path& given) {
    std::error_code unknown;
    const auto place = std::filesystem::weakly_canonical(given, unknown);
    // What can't be found out shows when the file is opened.
    return unknown ? std::filesystem::absolute(given) : place;
}

void expect_project_header(const std::filesystem::path& file) {
    const Header header = read_header(file);
    if (big_endian(header, kApplicationIdAt, 4) != kApplicationId)
        throw Error(Fault::unreadable, "'" + file.string() + "' is a database, but not a project.",
                    "Give the path of a .luft file.");
    const std::uint32_t version = big_endian(header, kUserVersionAt, 4);
    if (version > static_cast<std::uint32_t>(kVersionWritten))
        throw Error(Fault::newer,
                    "'" + file.string() + "' was written by a newer version of the program (format " +
                        std::to_string(version) + ", this one knows " + std::to_string(kVersionWritten) +
                        ").",
                    "Install the newer version; the file has not been touched.");
}

void expect_writable_folder(const std::filesystem::path& file) {
    const std::filesystem::path folder = file.parent_path();
    if (::faccessat(AT_FDCWD, folder.c_str(), W_OK | X_OK, AT_EACCESS) != 0)
        throw Error(Fault::cannot_write,
                    "The folder of '" + file.string() + "' can't be written: " + std::strerror(errno) + ".",
                    "Copy the project to a folder where you may write, and open the copy.");
}

Database open_recovered(const std::filesystem::path& file, Access access) {
    const auto open_and_look = [&](Database::Mode mode) {
        Database database(file, mode);
        database.script("SELECT count(*) FROM sqlite_schema"); // rolls back what a crash left behind
        return database;
    };
    if (access == Access::edit) return open_and_look(Database::Mode::edit);
    std::filesystem::path rest = file;
    rest += "-journal";
    std::error_code ignored;
    if (std::filesystem::file_size(rest, ignored) > 0 && !ignored) {
        // Somebody is writing, or was cut off while writing. Only a writer can roll back.
        try {
            return open_and_look(Database::Mode::read);
        } catch (const Error& e) {
            if (e.fault() != Fault::cannot_write) throw;
            open_and_look(Database::Mode::edit);
        }
    }
    return open_and_look(Database::Mode::read);
}

void expect_whole(Database& database, const std::filesystem::path& file) {
    const Transaction still(database, Transaction::Kind::reading);
    if (database.number("SELECT count(*) FROM sqlite_schema") == 0)
        throw Error(Fault::unreadable, "'" + file.string() + "' holds no tables.",
                    "Open a copy of the project from before it was damaged.");
    const Header header = read_header(file);
    // The page size 65536 is written as 1.
    std::uintmax_t page_size = big_endian(header, kPageSizeAt, 2);
    if (page_size == 1) page_size = 65536;
    const std::uintmax_t expected = page_size * big_endian(header, kPageCountAt, 4);
    const std::uintmax_t actual = std::filesystem::file_size(file);
    if (actual < expected)
        throw Error(Fault::unreadable,
                    "'" + file.string() + "' is cut off: " + std::to_string(actual) + " of " +
                        std::to_string(expected) + " bytes are there.",
                    "Open a copy of the project from before it was cut off.");
}

} // namespace luft::project
