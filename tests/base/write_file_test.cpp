#include "base/bytes.h"
#include "base/error.h"
#include "base/write_file.h"

#include <catch2/catch.hpp>
#include <sys/stat.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

using namespace luft;
namespace fs = std::filesystem;

namespace {

class Folder {
  public:
    Folder() {
        std::string pattern = (fs::temp_directory_path() / "base-test-XXXXXX").string();
        REQUIRE(::mkdtemp(pattern.data()) != nullptr);
        path = pattern;
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder() {
        std::error_code ignored;
        fs::remove_all(path, ignored);
    }
    [[nodiscard]] std::size_t count() const {
        return static_cast<std::size_t>(
            std::distance(fs::directory_iterator(path), fs::directory_iterator()));
    }
    fs::path path;
};

std::string text_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

} // namespace

TEST_CASE("a file is written whole, with every byte, and nothing is left beside it") {
    const Folder folder;
    const std::string text("line\r\n\0\xFF end", 12);
    write_file(folder.path / "cue sheet.csv", text);
    CHECK(text_of(folder.path / "cue sheet.csv") == text);
    write_file(folder.path / "cue sheet.csv", "");
    CHECK(text_of(folder.path / "cue sheet.csv").empty());
    CHECK(folder.count() == 1);
}

TEST_CASE("a replaced file is a new one: who has the old one open keeps it whole") {
    const Folder folder;
    const fs::path file = folder.path / "a.txt";
    write_file(file, "old words");
    std::ifstream reader(file);
    write_file(file, "new");
    CHECK(std::string(std::istreambuf_iterator<char>(reader), {}) == "old words");
    CHECK(text_of(file) == "new");
}

TEST_CASE("a file has the permissions that the user's mask leaves") {
    const Folder folder;
    const mode_t before = ::umask(027);
    write_file(folder.path / "a.txt", "x");
    ::umask(before);
    struct stat facts {};
    REQUIRE(::stat((folder.path / "a.txt").c_str(), &facts) == 0);
    CHECK((facts.st_mode & 0777) == 0640);
}

TEST_CASE("when writing fails what was there stays, and the reason is said") {
    const Folder folder;
    // A folder of that name can't be replaced by a file, for any user.
    const fs::path taken = folder.path / "taken";
    fs::create_directory(taken);
    write_file(taken / "inside", "kept");
    try {
        write_file(taken, "text");
        FAIL("it was written");
    } catch (const Error& e) {
        CHECK(e.fault() == Fault::cannot_write);
        CHECK(std::string(e.what()).find("taken") != std::string::npos);
        CHECK_FALSE(e.advice().empty());
    }
    CHECK(text_of(taken / "inside") == "kept");
    CHECK(folder.count() == 1);
    try {
        write_file(folder.path / "no such folder" / "a", "text");
        FAIL("it was written");
    } catch (const Error& e) {
        CHECK(e.fault() == Fault::cannot_write);
    }
    CHECK(folder.count() == 1);
}

TEST_CASE("a full disk leaves the old file as it was") {
    // Files of this process may grow to 4096 bytes only; the kernel then refuses like a full disk does.
    const Folder folder;
    const fs::path file = folder.path / "a.txt";
    write_file(file, "old");
    const std::string big(100000, 'x');
    const std::string command = "ulimit -f 4; trap '' XFSZ; exec '" +
                                fs::read_symlink("/proc/self/exe").string() +
                                "' '[.full_disk]' >/dev/null 2>&1";
    ::setenv("LUFT_TEST_FILE", file.c_str(), 1); // read only by the hidden test below
    CHECK(std::system(("sh -c \"" + command + "\"").c_str()) == 0);
    ::unsetenv("LUFT_TEST_FILE");
    CHECK(text_of(file) == "old");
    CHECK(folder.count() == 1);
}

TEST_CASE("(run by the test above) writing more than fits is refused", "[.full_disk]") {
    const char* file = std::getenv("LUFT_TEST_FILE");
    REQUIRE(file != nullptr);
    CHECK_THROWS_AS(write_file(file, std::string(100000, 'x')), Error);
}

TEST_CASE("a file is read from any place, and only as far as it goes") {
    const Folder folder;
    write_file(folder.path / "a.bin", "0123456789");
    const auto bytes = open_file(folder.path / "a.bin");
    CHECK(bytes->size() == 10);
    CHECK(bytes->name() == "a.bin");
    std::vector<std::byte> four(4);
    CHECK(bytes->read_at(3, four) == 4);
    CHECK(static_cast<char>(four[0]) == '3');
    CHECK(bytes->read_at(8, four) == 2);
    CHECK(static_cast<char>(four[1]) == '9');
    CHECK(bytes->read_at(10, four) == 0);
}

TEST_CASE("what isn't a regular file is not opened, with the reason") {
    const Folder folder;
    try {
        (void)open_file(folder.path / "nothing");
        FAIL("it was opened");
    } catch (const Error& e) {
        CHECK(e.fault() == Fault::not_found);
    }
    try {
        (void)open_file(folder.path);
        FAIL("it was opened");
    } catch (const Error& e) {
        CHECK(e.fault() == Fault::unreadable);
    }
}
