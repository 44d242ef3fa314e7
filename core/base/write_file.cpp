#include "base/write_file.h"

#include "base/error.h"
#include "base/new_mode.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string>

namespace luft {
namespace {

class Descriptor {
  public:
    explicit Descriptor(int fd) : fd_(fd) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() {
        if (fd_ >= 0) ::close(fd_);
    }
    [[nodiscard]] int get() const { return fd_; }

  private:
    int fd_;
};

bool write_all(int fd, std::string_view text) {
    while (!text.empty()) {
        const ssize_t n = ::write(fd, text.data(), text.size());
        if (n < 0 && errno == EINTR) continue;
        if (n < 0) return false;
        text.remove_prefix(static_cast<std::size_t>(n));
    }
    return ::fsync(fd) == 0;
}

} // namespace

void write_file(const std::filesystem::path& file, std::string_view text) {
    const auto fail = [&](const std::string& reason) {
        throw Error(Fault::cannot_write, "'" + file.string() + "' can't be written: " + reason + ".",
                    "Choose another folder, or make room there.");
    };
    std::string beside = file.string() + ".part-XXXXXX";
    {
        const Descriptor out(::mkstemp(beside.data()));
        if (out.get() < 0) fail(std::strerror(errno));
        const bool written = ::fchmod(out.get(), mode_of_new_files()) == 0 && write_all(out.get(), text);
        if (!written) {
            const std::string reason = std::strerror(errno);
            ::unlink(beside.c_str());
            fail(reason);
        }
    }
    if (std::rename(beside.c_str(), file.c_str()) != 0) {
        const std::string reason = std::strerror(errno);
        ::unlink(beside.c_str());
        fail(reason);
    }
}

} // namespace luft
