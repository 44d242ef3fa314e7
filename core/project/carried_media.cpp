#include "project/carried_media.h"

#include "base/error.h"
#include "project/file_header.h"

#include <algorithm>
#include <cstring>
#include <vector>

namespace luft::project {
namespace {

class CarriedBytes final : public ByteSource {
  public:
    CarriedBytes(Database& database, std::int64_t carried)
        : carried_(carried),
          chunks_(database.prepare("SELECT bytes FROM carried_chunk WHERE carried = ? AND position = ?")) {
        Statement row = database.query("SELECT name, size, chunk_size FROM carried WHERE id = ?", carried);
        if (!row.step()) throw lost("the carried recording");
        name_ = row.text(0);
        size_ = row.integer(1);
        chunk_size_ = row.integer(2);
        if (size_ <= 0 || chunk_size_ <= 0) throw lost("the size of '" + name_ + "'");
    }

    [[nodiscard]] std::int64_t size() const override { return size_; }
    [[nodiscard]] std::string name() const override { return name_; }

    std::size_t read_at(std::int64_t offset, std::span<std::byte> into) override {
        std::size_t done = 0;
        while (done < into.size() && offset >= 0 && offset < size_) {
            load(offset / chunk_size_);
            const auto from = static_cast<std::size_t>(offset % chunk_size_);
            const std::size_t n = std::min(into.size() - done, chunk_.size() - from);
            std::memcpy(into.data() + done, chunk_.data() + from, n);
            done += n;
            offset += static_cast<std::int64_t>(n);
        }
        return done;
    }

  private:
    /// The newest chunk is kept: readers come in small steps. Nothing stays locked between reads.
    void load(std::int64_t position) {
        if (position == loaded_) return;
        chunks_.bind(carried_, position);
        const bool there = chunks_.step();
        const auto bytes = there ? chunks_.blob(0) : std::span<const std::byte>();
        const std::int64_t expected = std::min(chunk_size_, size_ - position * chunk_size_);
        const bool fits = static_cast<std::int64_t>(bytes.size()) == expected;
        if (fits) chunk_.assign(bytes.begin(), bytes.end());
        loaded_ = fits ? position : -1;
        chunks_.reset();
        if (!fits) throw lost("a part of '" + name_ + "'");
    }

    static Error lost(const std::string& what) {
        return {Fault::unreadable, "The project file has lost " + what + ".",
                "Open a copy of the project from before it was damaged, or link the recording again."};
    }

    std::int64_t carried_;
    Statement chunks_;
    std::string name_;
    std::int64_t size_ = 0;
    std::int64_t chunk_size_ = kChunkSize;
    std::int64_t loaded_ = -1;
    std::vector<std::byte> chunk_;
};

class StandaloneBytes final : public ByteSource {
  public:
    StandaloneBytes(Database database, std::int64_t carried)
        : database_(std::move(database)), bytes_(database_, carried) {}

    [[nodiscard]] std::int64_t size() const override { return bytes_.size(); }
    [[nodiscard]] std::string name() const override { return bytes_.name(); }
    std::size_t read_at(std::int64_t offset, std::span<std::byte> into) override {
        return bytes_.read_at(offset, into);
    }

  private:
    Database database_;
    CarriedBytes bytes_;
};

} // namespace

std::int64_t carry(Database& database, ByteSource& from, const Progress& progress) {
    const std::int64_t size = from.size();
    database.run("INSERT INTO carried (name, size, chunk_size) VALUES (?, ?, ?)", from.name(), size,
                 kChunkSize);
    const std::int64_t carried = database.last_id();
    Statement insert =
        database.prepare("INSERT INTO carried_chunk (carried, position, bytes) VALUES (?, ?, ?)");
    std::vector<std::byte> chunk(static_cast<std::size_t>(std::min(size, kChunkSize)));
    for (std::int64_t offset = 0; offset < size; offset += kChunkSize) {
        progress.step(static_cast<double>(offset) / static_cast<double>(size), "copying the recording");
        const auto wanted =
            std::span(chunk).first(static_cast<std::size_t>(std::min(kChunkSize, size - offset)));
        if (from.read_at(offset, wanted) != wanted.size())
            throw Error(Fault::unreadable, "'" + from.name() + "' became shorter while it was read.",
                        "Wait until the recording is finished, and add it again.");
        insert.bind(carried, offset / kChunkSize, std::span<const std::byte>(wanted)).run();
    }
    return carried;
}

std::unique_ptr<ByteSource> carried_bytes(Database& database, std::int64_t carried) {
    return std::make_unique<CarriedBytes>(database, carried);
}

std::unique_ptr<ByteSource> open_carried(const std::filesystem::path& project, std::int64_t carried) {
    return std::make_unique<StandaloneBytes>(open_recovered(project, Access::read), carried);
}

} // namespace luft::project
