// A media file in the making: bytes go into a file beside the final one, "NAME.luft-part", which is renamed
// when it is whole. One that a killed program has left there is written over; the ending is this program's
// own, so that it is no other one's unfinished file.
#pragma once

#include "media/handles.h"

#include <filesystem>
#include <string>

namespace luft::media {

class PartFile {
  public:
    /// Throws Error(cannot_write) when no file can be made in that folder, Error(busy) while another program
    /// writes the same one.
    explicit PartFile(std::filesystem::path file);
    PartFile(const PartFile&) = delete;
    PartFile& operator=(const PartFile&) = delete;
    ~PartFile(); ///< removes the unfinished file

    [[nodiscard]] AVIOContext* io() { return io_.get(); }

    /// Puts the file on disk under its final name. Throws Error(cannot_write).
    void keep();

    /// Throws Error(cannot_write) with the system's reason when writing failed, else with `otherwise`.
    [[noreturn]] void fail(const std::string& otherwise) const;

  private:
    static int write(void* self, std::uint8_t* bytes, int count);
    static std::int64_t seek(void* self, std::int64_t offset, int whence);

    std::filesystem::path file_;
    std::string beside_;
    int fd_ = -1;
    int failure_ = 0; ///< errno of the first failed write
    Io io_;
};

} // namespace luft::media
