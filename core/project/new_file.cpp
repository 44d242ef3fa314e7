#include "project/new_file.h"

#include "base/error.h"
#include "base/new_mode.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <utility>

namespace luft::project {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const fs::path& file, int why) {
    throw Error(Fault::cannot_write, "'" + file.string() + "' can't be made: " + std::strerror(why) + ".",
                "Choose a folder that exists, where you may write and where there is room.");
}

[[noreturn]] void taken(const fs::path& file) {
    throw Error(Fault::cannot_write, "'" + file.string() + "' exists already.",
                "Choose another name, or open the project that is there.");
}

void expect_free(const fs::path& file) {
    struct stat there {};
    if (::lstat(file.c_str(), &there) == 0) taken(file);
    const fs::path journal = file.string() + "-journal";
    if (::lstat(journal.c_str(), &there) == 0)
        throw Error(Fault::cannot_write,
                    "'" + journal.string() + "' lies there: an edit of a project of that name was cut off.",
                    "Put it beside that project and open the project once, or choose another name.");
}

bool sync(const fs::path& place, int flags) {
    const int opened = ::open(place.c_str(), flags | O_CLOEXEC);
    if (opened < 0) return false;
    const bool synced = ::fsync(opened) == 0;
    const int why = errno;
    ::close(opened);
    errno = why;
    return synced;
}

/// Renames, unless something has the new name; false with errno.
bool rename_to_free(const fs::path& from, const fs::path& to) {
#ifdef RENAME_NOREPLACE
    if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return true;
    if (errno != EINVAL && errno != ENOSYS) return false;
#endif
    // A file system that can't do both at once: the name is claimed first.
    const int claimed = ::open(to.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600);
    if (claimed < 0) return false;
    ::close(claimed);
    if (std::rename(from.c_str(), to.c_str()) == 0) return true;
    const int why = errno;
    ::unlink(to.c_str());
    errno = why;
    return false;
}

} // namespace

NewFile::NewFile(fs::path final_name) : final_(std::move(final_name)) {
    expect_free(final_);
    std::string name = final_.string() + ".part-XXXXXX";
    const int made = ::mkstemp(name.data());
    if (made < 0) refuse(final_, errno);
    path_ = name;
    const bool allowed = ::fchmod(made, mode_of_new_files()) == 0;
    const int why = errno;
    ::close(made);
    if (allowed) return;
    ::unlink(path_.c_str());
    refuse(final_, why);
}

NewFile::~NewFile() {
    if (!kept_) ::unlink(path_.c_str());
}

void NewFile::permit_as(const fs::path& other) {
    struct stat there {};
    if (::stat(other.c_str(), &there) != 0 || ::chmod(path_.c_str(), there.st_mode & 0777) != 0)
        refuse(final_, errno);
}

void NewFile::keep() {
    keep_as(final_);
}

void NewFile::keep_as(const fs::path& name) {
    expect_free(name);
    if (!sync(path_, O_RDWR)) refuse(name, errno);
    if (!rename_to_free(path_, name)) {
        if (errno == EEXIST) taken(name);
        refuse(name, errno);
    }
    kept_ = true;
    // Some file systems don't let a folder be opened; they keep it in order alone.
    sync(fs::absolute(name).parent_path(), O_RDONLY | O_DIRECTORY);
}

} // namespace luft::project
