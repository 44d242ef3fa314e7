#include "project/file_header.h"

#include "base/error.h"
#include "project/schema.h"

#include <fcntl.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <string_view>

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

Header read_header(const std::filesystem::path& file) {
    const std::string name = "'" + file.string() + "'";
    std::error_code failure;
    const auto status = std::filesystem::status(file, failure);
    if (!std::filesystem::exists(status))
        throw Error(Fault::not_found, "There is no project " + name + ".", "Check the path.");
    if (!std::filesystem::is_regular_file(status))
        throw Error(Fault::unreadable, name + " is not a file.", "Give the path of a .luft file.");
    std::ifstream stream(file, std::ios::binary);
    if (!stream)
        throw Error(Fault::unreadable, name + " can't be read: " + std::strerror(errno) + ".",
                    "Check who may read the file.");
    Header header{};
    stream.read(reinterpret_cast<char*>(header.data()), header.size());
    if (stream.gcount() == 0)
        throw Error(Fault::unreadable, name + " is empty.", "Give the path of a .luft file.");
    if (static_cast<std::size_t>(stream.gcount()) < header.size() ||
        std::memcmp(header.data(), kMagic.data(), kMagic.size()) != 0)
        throw Error(Fault::unreadable, name + " is not a project.", "Choose a file that Luftpause has made.");
    return header;
}

} // namespace

void reserve_file(const std::filesystem::path& file) {
    constexpr mode_t kReadableByAll = 0666; // the process's mask takes from it
    const int made = ::open(file.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, kReadableByAll);
    if (made >= 0) {
        ::close(made);
        return;
    }
    if (errno == EEXIST)
        throw Error(Fault::cannot_write, "'" + file.string() + "' exists already.",
                    "Choose another name, or open the project that is there.");
    throw Error(Fault::cannot_write, "'" + file.string() + "' can't be made: " + std::strerror(errno) + ".",
                "Choose a folder that exists and where you may write.");
}

void sync_folder_of(const std::filesystem::path& file) {
    const std::filesystem::path folder = std::filesystem::absolute(file).parent_path();
    const int open_folder = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (open_folder < 0)
        return; // some file systems don't let a folder be opened; they keep it in order alone
    ::fsync(open_folder);
    ::close(open_folder);
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
