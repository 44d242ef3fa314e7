// The pages of an SQLite file read without SQLite, so that a damaged one still gives what is whole in it.
#pragma once

#include "base/bytes.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace luft::project {

using StoredValue = std::variant<std::nullptr_t, std::int64_t, double, std::string, std::vector<std::byte>>;

struct StoredRow {
    std::int64_t rowid = 0;
    std::vector<StoredValue> values; ///< as they lie in the file: the row id's own column is null there
};

/// Reads tables by the published format (sqlite.org/fileformat2.html, sections 1.3 to 1.6 and 2.1). Whatever
/// a page says is checked against the file's size, and no page is visited twice, so that any bytes at all end
/// in bounded time and memory. Not for indexes and tables without row ids.
class PageFile {
  public:
    /// Takes the rows of a page, in order; how many of them belong where they were found. When half of all
    /// that begin on the page do, the page itself belongs there.
    using Take = std::function<std::size_t(const std::vector<StoredRow>&)>;

    /// A page size that can't be is taken for 4096 bytes, which is what SQLite makes. Bytes reserved at a
    /// page's end, which only extensions ask for, aren't known.
    explicit PageFile(std::unique_ptr<ByteSource> bytes);

    struct Loss {
        std::int64_t pages = 0; ///< that can't be read, each perhaps with others below it
        std::int64_t rows = 0;  ///< that begin on a sound page, and can't be read
    };

    /// The table whose tree begins at this page (1 is the file's first one).
    Loss read_table(std::int64_t root, const Take& take);
    /// Pages of rows that belong to no table read before, and aren't free.
    void read_strays(const Take& take);

  private:
    struct Page;
    [[nodiscard]] std::optional<Page> load(std::int64_t number) const;
    [[nodiscard]] std::optional<StoredRow> read_row(const Page& page, std::size_t at,
                                                    std::vector<std::int64_t>& overflow) const;
    /// Claims the page, and what it flows over into, when it belongs there.
    bool read_leaf(const Page& page, const Take& take, Loss& loss);
    void claim(std::int64_t number) { claimed_.at(static_cast<std::size_t>(number)) = true; }
    [[nodiscard]] bool is_claimed(std::int64_t number) const {
        return claimed_.at(static_cast<std::size_t>(number));
    }
    void claim_free_pages();

    std::unique_ptr<ByteSource> bytes_;
    std::size_t page_size_ = 4096;
    std::int64_t count_ = 0;
    std::vector<bool> claimed_; ///< by number; 0 isn't used
};

} // namespace luft::project
