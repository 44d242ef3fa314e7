#include "base/bytes.h"
#include "base/error.h"
#include "base/new_mode.h"
#include "base/write_file.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <atomic>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <thread>

using namespace luft;
using namespace luft::test;
namespace fs = std::filesystem;

TEST_CASE("a file is written whole, with every byte, and nothing is left beside it") {
    const Folder folder;
    const std::string text("line\r\n\0\xFF end", 12);
    write_file(folder / "cue sheet.csv", text);
    CHECK(read_all(folder / "cue sheet.csv") == text);
    write_file(folder / "cue sheet.csv", "");
    CHECK(read_all(folder / "cue sheet.csv").empty());
    CHECK(folder.names() == std::vector<std::string>{"cue sheet.csv"});
}

TEST_CASE("a replaced file is a new one: who has the old one open keeps it whole") {
    const Folder folder;
    const fs::path file = folder / "a.txt";
    write_file(file, "old words");
    std::ifstream reader(file);
    write_file(file, "new");
    CHECK(std::string(std::istreambuf_iterator<char>(reader), {}) == "old words");
    CHECK(read_all(file) == "new");
}

TEST_CASE("a file has the permissions that the user's mask leaves") {
    const Folder folder;
    const mode_t before = ::umask(027);
    write_file(folder / "a.txt", "x");
    ::umask(before);
    struct stat facts {};
    REQUIRE(::stat((folder / "a.txt").c_str(), &facts) == 0);
    CHECK((facts.st_mode & 0777) == 0640);
}

TEST_CASE("when writing fails what was there stays, and the reason is said") {
    const Folder folder;
    // A folder of that name can't be replaced by a file, for any user.
    const fs::path taken = folder / "taken";
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
    const std::vector<std::string> before{"taken", "taken/inside"};
    CHECK(read_all(taken / "inside") == "kept");
    CHECK(folder.names() == before);
    try {
        write_file(folder / "no such folder" / "a", "text");
        FAIL("it was written");
    } catch (const Error& e) {
        CHECK(e.fault() == Fault::cannot_write);
    }
    CHECK(folder.names() == before);
}

TEST_CASE("a full disk leaves the old file as it was") {
    // Files of this process may grow to 4096 bytes only; the kernel then refuses like a full disk does.
    const Folder folder;
    const fs::path file = folder / "a.txt";
    write_file(file, "old");
    ::setenv("LUFT_TEST_FILE", file.c_str(), 1); // read only by the hidden test below
    run("ulimit -f 4; trap '' XFSZ; exec " + quoted(fs::read_symlink("/proc/self/exe")) + " '[.full_disk]'");
    ::unsetenv("LUFT_TEST_FILE");
    CHECK(read_all(file) == "old");
    CHECK(folder.names() == std::vector<std::string>{"a.txt"});
}

TEST_CASE("(run by the test above) writing more than fits is refused", "[.full_disk]") {
    const char* file = std::getenv("LUFT_TEST_FILE");
    REQUIRE(file != nullptr);
    CHECK_THROWS_AS(write_file(file, std::string(100000, 'x')), Error);
}

TEST_CASE("a file is read from any place, and only as far as it goes") {
    const Folder folder;
    write_file(folder / "a.bin", "0123456789");
    const auto bytes = open_file(folder / "a.bin");
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
        (void)open_file(folder / "nothing");
        FAIL("it was opened");
    } catch (const Error& e) {
        CHECK(e.fault() == Fault::not_found);
    }
    try {
        (void)open_file(folder.path());
        FAIL("it was opened");
    } catch (const Error& e) {
        CHECK(e.fault() == Fault::unreadable);
    }
}

TEST_CASE("a file may be read by whom the user's mask lets, and the mask is never changed for it") {
    const Folder folder;
    const mode_t before = ::umask(0027);
    write_file(folder / "a.txt", "a");
    // Another thread's file, made meanwhile, would be open to everybody if asking set the mask.
    std::atomic<int> open_to_all = 0;
    {
        std::jthread other([&](const std::stop_token& stop) {
            for (int i = 0; !stop.stop_requested(); ++i) {
                const auto name = folder / ("b" + std::to_string(i));
                ::close(::open(name.c_str(), O_CREAT | O_WRONLY | O_CLOEXEC, 0666));
                struct stat made {};
                if (::stat(name.c_str(), &made) == 0 && (made.st_mode & 0777) != 0640) ++open_to_all;
                std::filesystem::remove(name);
            }
        });
        for (int i = 0; i < 2000; ++i)
            CHECK(mode_of_new_files() == 0640);
    }
    ::umask(before);
    struct stat written {};
    REQUIRE(::stat((folder / "a.txt").c_str(), &written) == 0);
    CHECK((written.st_mode & 0777) == 0640);
    CHECK(open_to_all == 0);
}
