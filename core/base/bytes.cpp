#include "base/bytes.h"

#include "base/error.h"

#include <algorithm>
#include <fstream>

namespace luft {
namespace {

class FileBytes final : public ByteSource {
  public:
    FileBytes(const std::filesystem::path& path, std::int64_t size)
        : name_(path.filename().string()), size_(size), stream_(path, std::ios::binary) {
        if (!stream_) throw Error(Fault::unreadable, "'" + path.string() + "' can't be opened for reading.");
    }

    [[nodiscard]] std::int64_t size() const override { return size_; }
    [[nodiscard]] std::string name() const override { return name_; }

    std::size_t read_at(std::int64_t offset, std::span<std::byte> into) override {
        // A file that grows meanwhile ends where it ended when it was opened.
        if (offset < 0 || offset >= size_) return 0;
        const auto count =
            static_cast<std::size_t>(std::min(static_cast<std::int64_t>(into.size()), size_ - offset));
        stream_.clear();
        stream_.seekg(offset);
        stream_.read(reinterpret_cast<char*>(into.data()), static_cast<std::streamsize>(count));
        if (stream_.bad()) throw Error(Fault::unreadable, "'" + name_ + "' can't be read (device error).");
        return static_cast<std::size_t>(stream_.gcount());
    }

  private:
    std::string name_;
    std::int64_t size_;
    std::ifstream stream_;
};

} // namespace

std::unique_ptr<ByteSource> open_file(const std::filesystem::path& path) {
    std::error_code failure;
    const auto status = std::filesystem::status(path, failure);
    if (!std::filesystem::exists(status))
        throw Error(Fault::not_found, "There is no file '" + path.string() + "'.");
    if (!std::filesystem::is_regular_file(status))
        throw Error(Fault::unreadable, "'" + path.string() + "' is not a file.");
    const auto size = std::filesystem::file_size(path, failure);
    if (failure)
        throw Error(Fault::unreadable, "'" + path.string() + "' can't be read: " + failure.message() + ".");
    return std::make_unique<FileBytes>(path, static_cast<std::int64_t>(size));
}

} // namespace luft
