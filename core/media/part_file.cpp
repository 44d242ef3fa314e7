#include "media/part_file.h"

#include "base/error.h"
#include "base/new_mode.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>

namespace luft::media {
namespace {

constexpr int kBuffer = 1 << 16;

/// The file of that name, empty, and locked as long as it is open; -1 with errno when that can't be had:
/// EWOULDBLOCK when another writer holds it.
int open_alone(const std::string& name) {
    for (;;) {
        const int fd = ::open(name.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
        if (fd < 0) return -1;
        const bool held = ::flock(fd, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK;
        errno = 0; // else an earlier failure would be taken for that of a check that sets none
        struct stat opened {};
        struct stat named {};
        if (!held && ::fstat(fd, &opened) == 0 && S_ISREG(opened.st_mode)) {
            // Another writer may have renamed or removed it between opening and locking.
            const bool ours = ::stat(name.c_str(), &named) == 0 && named.st_dev == opened.st_dev &&
                              named.st_ino == opened.st_ino;
            if (ours && ::ftruncate(fd, 0) == 0) return fd;
            if (!ours) {
                ::close(fd);
                continue;
            }
        }
        const int why = held ? EWOULDBLOCK : errno != 0 ? errno : EINVAL;
        ::close(fd);
        errno = why;
        return -1;
    }
}

} // namespace

PartFile::PartFile(std::filesystem::path file)
    : file_(std::move(file)), beside_(file_.string() + ".luft-part") {
    fd_ = open_alone(beside_);
    if (fd_ < 0) {
        failure_ = errno;
        beside_.clear();
        if (failure_ == EWOULDBLOCK)
            throw Error(Fault::busy, "'" + file_.string() + "' is just being written by another program.",
                        "Wait until it is done, or choose another name.");
        fail("");
    }
    auto* buffer = static_cast<unsigned char*>(av_malloc(kBuffer));
    io_.reset(avio_alloc_context(buffer, kBuffer, 1, this, nullptr, write, seek));
    if (!io_) {
        av_free(buffer);
        ::unlink(beside_.c_str());
        ::close(fd_);
        throw std::bad_alloc();
    }
}

PartFile::~PartFile() {
    if (!beside_.empty()) ::unlink(beside_.c_str()); // while it is still locked
    if (fd_ >= 0) ::close(fd_);
}

void PartFile::keep() {
    avio_flush(io_.get());
    if (failure_ != 0) fail("");
    if (::fchmod(fd_, mode_of_new_files()) != 0 || ::fsync(fd_) != 0 ||
        std::rename(beside_.c_str(), file_.c_str()) != 0) {
        failure_ = errno;
        fail("");
    }
    beside_.clear();
}

void PartFile::fail(const std::string& otherwise) const {
    throw Error(Fault::cannot_write,
                "'" + file_.string() +
                    "' can't be written: " + (failure_ != 0 ? std::strerror(failure_) : otherwise) + ".",
                "Choose another folder, or make room there.");
}

int PartFile::write(void* self, std::uint8_t* bytes, int count) {
    auto& part = *static_cast<PartFile*>(self);
    for (int done = 0; done < count;) {
        const ssize_t n = ::write(part.fd_, bytes + done, static_cast<std::size_t>(count - done));
        if (n < 0 && errno == EINTR) continue;
        if (n < 0) {
            if (part.failure_ == 0) part.failure_ = errno;
            return AVERROR(errno);
        }
        done += static_cast<int>(n);
    }
    return count;
}

std::int64_t PartFile::seek(void* self, std::int64_t offset, int whence) {
    auto& part = *static_cast<PartFile*>(self);
    if ((whence & AVSEEK_SIZE) != 0) {
        struct stat facts {};
        return ::fstat(part.fd_, &facts) == 0 ? facts.st_size : AVERROR(errno);
    }
    const off_t at = ::lseek(part.fd_, offset, whence & ~AVSEEK_FORCE);
    return at < 0 ? AVERROR(errno) : at;
}

} // namespace luft::media
