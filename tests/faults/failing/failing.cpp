// A library for LD_PRELOAD that lets one chosen change of a file fail, or kills the program there. It counts
// the calls that change files under one folder, and writes each of them down. Set by the environment
// (tests/faults/failing.h):
//   FAILING_UNDER   the folder
//   FAILING_LOG     file outside of it: a line a call, "NAME PATH"
//   FAILING_AT      which call, from 1; 0 or missing = none, they are only counted
//   FAILING_HOW     "kill", or the number that errno is set to
//   FAILING_ON      1 = all calls from there on fail, but for those that remove a file
//   FAILING_HALF    1 = what is to be written there is written by half first
#include <dlfcn.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/uio.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <cerrno>
#include <climits>
#include <csignal>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string>
#include <string_view>

namespace {

std::string from_environment(const char* name) {
    const char* value = std::getenv(name);
    return value ? value : "";
}

struct Wish {
    std::string under = from_environment("FAILING_UNDER");
    long at = std::atol(from_environment("FAILING_AT").c_str());
    bool kill = from_environment("FAILING_HOW") == "kill";
    int error = std::atoi(from_environment("FAILING_HOW").c_str());
    bool on = from_environment("FAILING_ON") == "1";
    bool half = from_environment("FAILING_HALF") == "1";
    int log = static_cast<int>(syscall(SYS_openat, AT_FDCWD, from_environment("FAILING_LOG").c_str(),
                                       O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600));
};

const Wish& wish() {
    static const Wish it;
    return it;
}

std::atomic<long> calls{0};

bool is_under(std::string_view path) {
    const std::string& folder = wish().under;
    return !folder.empty() && path.starts_with(folder);
}

std::string path_of(int fd) {
    char path[PATH_MAX];
    const ssize_t n = readlink(("/proc/self/fd/" + std::to_string(fd)).c_str(), path, sizeof path);
    return n > 0 ? std::string(path, static_cast<std::size_t>(n)) : std::string();
}

std::string path_of(int folder, const char* name) {
    if (name[0] == '/') return name;
    const std::string base =
        folder == AT_FDCWD ? "/proc/self/cwd" : "/proc/self/fd/" + std::to_string(folder);
    char path[PATH_MAX];
    const ssize_t n = readlink(base.c_str(), path, sizeof path);
    return n > 0 ? std::string(path, static_cast<std::size_t>(n)) + "/" + name : std::string(name);
}

enum class Do { go_on, fail, half_then_fail };

/// Counts one call; kills the program, unless half has to be done first.
Do count(const char* name, const std::string& path, bool removes = false) {
    if (!is_under(path)) return Do::go_on;
    const long number = ++calls;
    const std::string line = std::string(name) + " " + path + "\n";
    syscall(SYS_write, wish().log, line.data(), line.size());
    if (wish().at == 0 || number < wish().at) return Do::go_on;
    if (number > wish().at) return wish().on && !removes ? Do::fail : Do::go_on;
    if (wish().half) return Do::half_then_fail;
    if (wish().kill) raise(SIGKILL);
    // A full or failing disk still lets names be removed.
    return removes && wish().on ? Do::go_on : Do::fail;
}

int failed() {
    errno = wish().error;
    return -1;
}

template <class Call>
Call* real(const char* name) {
    return reinterpret_cast<Call*>(dlsym(RTLD_NEXT, name));
}

/// A call without an amount that could be halved.
template <class Result, class Go>
Result whole(const char* name, const std::string& path, Go go, bool removes = false) {
    switch (count(name, path, removes)) {
    case Do::half_then_fail:
        if (wish().kill) raise(SIGKILL);
        [[fallthrough]];
    case Do::fail:
        return static_cast<Result>(failed());
    case Do::go_on:
        break;
    }
    return go();
}

/// A call that writes `amount` bytes. A system writes a part and says so; only the next call fails.
template <class Go>
ssize_t amount(const char* name, int fd, std::size_t bytes, Go go) {
    switch (count(name, path_of(fd))) {
    case Do::half_then_fail: {
        const ssize_t done = bytes > 1 ? go(bytes / 2) : 0;
        if (wish().kill) raise(SIGKILL);
        return done > 0 ? done : failed();
    }
    case Do::fail:
        return failed();
    case Do::go_on:
        break;
    }
    return go(bytes);
}

bool changes(int flags) {
    return (flags & O_ACCMODE) != O_RDONLY || (flags & (O_CREAT | O_TRUNC)) != 0;
}

template <class Go>
int opening(const char* name, const std::string& path, int flags, Go go) {
    return changes(flags) ? whole<int>(name, path, go) : go();
}

mode_t mode_in(int flags, va_list more) {
    return (flags & (O_CREAT | O_TMPFILE)) != 0 ? static_cast<mode_t>(va_arg(more, unsigned)) : 0;
}

} // namespace

// The names are the system's.
// NOLINTBEGIN
extern "C" {

#define OPEN(NAME)                                                                                           \
    int NAME(const char* path, int flags, ...) {                                                             \
        va_list more;                                                                                        \
        va_start(more, flags);                                                                               \
        const mode_t mode = mode_in(flags, more);                                                            \
        va_end(more);                                                                                        \
        return opening("open", path_of(AT_FDCWD, path), flags,                                               \
                       [&] { return real<int(const char*, int, ...)>(#NAME)(path, flags, mode); });          \
    }
OPEN(open)
OPEN(open64)

#define OPEN_AT(NAME)                                                                                        \
    int NAME(int folder, const char* path, int flags, ...) {                                                 \
        va_list more;                                                                                        \
        va_start(more, flags);                                                                               \
        const mode_t mode = mode_in(flags, more);                                                            \
        va_end(more);                                                                                        \
        return opening("open", path_of(folder, path), flags, [&] {                                           \
            return real<int(int, const char*, int, ...)>(#NAME)(folder, path, flags, mode);                  \
        });                                                                                                  \
    }
OPEN_AT(openat)
OPEN_AT(openat64)

#define OPEN_PLAIN(NAME)                                                                                     \
    int NAME(const char* path, int flags) {                                                                  \
        return opening("open", path_of(AT_FDCWD, path), flags,                                               \
                       [&] { return real<int(const char*, int)>(#NAME)(path, flags); });                     \
    }
OPEN_PLAIN(__open_2)
OPEN_PLAIN(__open64_2)

#define CREAT(NAME)                                                                                          \
    int NAME(const char* path, mode_t mode) {                                                                \
        return whole<int>("open", path_of(AT_FDCWD, path),                                                   \
                          [&] { return real<int(const char*, mode_t)>(#NAME)(path, mode); });                \
    }
CREAT(creat)
CREAT(creat64)

#define TEMPORARY(NAME, RESULT, FAILED)                                                                      \
    RESULT NAME(char* pattern) {                                                                             \
        if (count(#NAME, path_of(AT_FDCWD, pattern)) == Do::go_on)                                           \
            return real<RESULT(char*)>(#NAME)(pattern);                                                      \
        if (wish().kill) raise(SIGKILL);                                                                     \
        failed();                                                                                            \
        return FAILED;                                                                                       \
    }
TEMPORARY(mkstemp, int, -1)
TEMPORARY(mkstemp64, int, -1)
TEMPORARY(mkdtemp, char*, nullptr)

#define FOPEN(NAME)                                                                                          \
    FILE* NAME(const char* path, const char* mode) {                                                         \
        const auto go = [&] { return real<FILE*(const char*, const char*)>(#NAME)(path, mode); };            \
        if (std::strpbrk(mode, "wa+") == nullptr || count("open", path_of(AT_FDCWD, path)) == Do::go_on)     \
            return go();                                                                                     \
        if (wish().kill) raise(SIGKILL);                                                                     \
        failed();                                                                                            \
        return nullptr;                                                                                      \
    }
FOPEN(fopen)
FOPEN(fopen64)

ssize_t write(int fd, const void* bytes, size_t size) {
    return amount("write", fd, size,
                  [&](size_t n) { return real<ssize_t(int, const void*, size_t)>("write")(fd, bytes, n); });
}

#define PWRITE(NAME)                                                                                         \
    ssize_t NAME(int fd, const void* bytes, size_t size, off_t at) {                                         \
        return amount("write", fd, size, [&](size_t n) {                                                     \
            return real<ssize_t(int, const void*, size_t, off_t)>(#NAME)(fd, bytes, n, at);                  \
        });                                                                                                  \
    }
PWRITE(pwrite)
PWRITE(pwrite64)

ssize_t writev(int fd, const iovec* parts, int count) {
    return amount("write", fd, count > 1 ? 2 : 1, [&](size_t n) {
        return real<ssize_t(int, const iovec*, int)>("writev")(fd, parts, n == 2 || count == 1 ? count : 1);
    });
}

#define TRUNCATE(NAME)                                                                                       \
    int NAME(int fd, off_t size) {                                                                           \
        return whole<int>("truncate", path_of(fd), [&] { return real<int(int, off_t)>(#NAME)(fd, size); });  \
    }
TRUNCATE(ftruncate)
TRUNCATE(ftruncate64)

#define TRUNCATE_NAMED(NAME)                                                                                 \
    int NAME(const char* path, off_t size) {                                                                 \
        return whole<int>("truncate", path_of(AT_FDCWD, path),                                               \
                          [&] { return real<int(const char*, off_t)>(#NAME)(path, size); });                 \
    }
TRUNCATE_NAMED(truncate)
TRUNCATE_NAMED(truncate64)

#define ALLOCATE(NAME)                                                                                       \
    int NAME(int fd, int mode, off_t at, off_t size) {                                                       \
        return whole<int>("allocate", path_of(fd),                                                           \
                          [&] { return real<int(int, int, off_t, off_t)>(#NAME)(fd, mode, at, size); });     \
    }
ALLOCATE(fallocate)
ALLOCATE(fallocate64)

// This one returns the reason instead of setting errno.
#define ALLOCATE_POSIX(NAME)                                                                                 \
    int NAME(int fd, off_t at, off_t size) {                                                                 \
        const int done = whole<int>("allocate", path_of(fd),                                                 \
                                    [&] { return real<int(int, off_t, off_t)>(#NAME)(fd, at, size); });      \
        return done < 0 ? wish().error : done;                                                               \
    }
ALLOCATE_POSIX(posix_fallocate)
ALLOCATE_POSIX(posix_fallocate64)

#define SYNC(NAME)                                                                                           \
    int NAME(int fd) {                                                                                       \
        return whole<int>("sync", path_of(fd), [&] { return real<int(int)>(#NAME)(fd); });                   \
    }
SYNC(fsync)
SYNC(fdatasync)

#define TWO_NAMES(NAME)                                                                                      \
    int NAME(const char* from, const char* to) {                                                             \
        return whole<int>(#NAME, path_of(AT_FDCWD, to),                                                      \
                          [&] { return real<int(const char*, const char*)>(#NAME)(from, to); });             \
    }
TWO_NAMES(rename)
TWO_NAMES(link)
TWO_NAMES(symlink)

int renameat(int folder, const char* from, int other, const char* to) {
    return whole<int>("rename", path_of(other, to), [&] {
        return real<int(int, const char*, int, const char*)>("renameat")(folder, from, other, to);
    });
}

int renameat2(int folder, const char* from, int other, const char* to, unsigned flags) {
    return whole<int>("rename", path_of(other, to), [&] {
        return real<int(int, const char*, int, const char*, unsigned)>("renameat2")(folder, from, other, to,
                                                                                    flags);
    });
}

#define REMOVE(NAME)                                                                                         \
    int NAME(const char* path) {                                                                             \
        return whole<int>(                                                                                   \
            #NAME, path_of(AT_FDCWD, path), [&] { return real<int(const char*)>(#NAME)(path); }, true);      \
    }
REMOVE(unlink)
REMOVE(remove)
REMOVE(rmdir)

int unlinkat(int folder, const char* path, int flags) {
    return whole<int>(
        "unlink", path_of(folder, path),
        [&] { return real<int(int, const char*, int)>("unlinkat")(folder, path, flags); }, true);
}

int mkdir(const char* path, mode_t mode) {
    return whole<int>("mkdir", path_of(AT_FDCWD, path),
                      [&] { return real<int(const char*, mode_t)>("mkdir")(path, mode); });
}

#define CHMOD_OPEN(NAME)                                                                                     \
    int NAME(int fd, mode_t mode) {                                                                          \
        return whole<int>(#NAME, path_of(fd), [&] { return real<int(int, mode_t)>(#NAME)(fd, mode); });      \
    }
CHMOD_OPEN(fchmod)

} // extern "C"
// NOLINTEND
