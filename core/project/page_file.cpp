#include "project/page_file.h"

#include "project/stored_record.h"

#include <algorithm>
#include <array>

namespace luft::project {
namespace {

constexpr std::size_t kFileHeader = 100;
constexpr std::size_t kPageSizeAt = 16, kFirstFreeAt = 32;
/// Far above what a project has: curves of eight hours take 12 MB. Bounds what a damaged length can cost.
constexpr std::uint64_t kLongestRow = std::uint64_t{64} << 20;
constexpr unsigned kInteriorTable = 5, kLeafTable = 13;

bool is_page_size(std::size_t size) {
    return size >= 512 && size <= 65536 && (size & (size - 1)) == 0;
}

} // namespace

struct PageFile::Page {
    std::int64_t number = 0;
    std::vector<std::byte> bytes;
    std::size_t head = 0; ///< where the page's own header begins

    [[nodiscard]] std::uint64_t at(std::size_t offset, std::size_t size) const {
        return big_endian(bytes, offset, size);
    }
    [[nodiscard]] unsigned kind() const { return static_cast<unsigned>(at(head, 1)); }
    [[nodiscard]] std::size_t cells() const { return at(head + 3, 2); }
    [[nodiscard]] std::size_t cells_from() const { return head + (kind() == kInteriorTable ? 12 : 8); }
    [[nodiscard]] std::size_t cell(std::size_t i) const { return at(cells_from() + 2 * i, 2); }
    [[nodiscard]] bool whole() const { return cells_from() + 2 * cells() <= bytes.size(); }
};

PageFile::PageFile(std::unique_ptr<ByteSource> bytes) : bytes_(std::move(bytes)) {
    std::vector<std::byte> header(kFileHeader);
    if (bytes_->read_at(0, header) == kFileHeader) {
        std::size_t size = big_endian(header, kPageSizeAt, 2);
        if (size == 1) size = 65536; // as the format writes it
        if (is_page_size(size)) page_size_ = size;
    }
    count_ = bytes_->size() / static_cast<std::int64_t>(page_size_);
    claimed_.resize(static_cast<std::size_t>(count_) + 1);
    claim_free_pages();
}

std::optional<PageFile::Page> PageFile::load(std::int64_t number) const {
    if (number < 1 || number > count_) return std::nullopt;
    Page page{number, std::vector<std::byte>(page_size_), number == 1 ? kFileHeader : 0};
    if (bytes_->read_at((number - 1) * static_cast<std::int64_t>(page_size_), page.bytes) < page_size_)
        return std::nullopt;
    return page;
}

/// Section 1.5: a chain of trunks, each with the numbers of free pages.
void PageFile::claim_free_pages() {
    const auto first = load(1);
    if (!first) return;
    std::int64_t trunk = static_cast<std::int64_t>(first->at(kFirstFreeAt, 4));
    while (trunk > 1 && trunk <= count_ && !is_claimed(trunk)) {
        const auto page = load(trunk);
        if (!page) return;
        const std::size_t leaves = std::min<std::size_t>(page->at(4, 4), page_size_ / 4 - 2);
        claim(trunk);
        for (std::size_t i = 0; i < leaves; ++i)
            if (const auto leaf = static_cast<std::int64_t>(page->at(8 + 4 * i, 4));
                leaf > 1 && leaf <= count_)
                claim(leaf);
        trunk = static_cast<std::int64_t>(page->at(0, 4));
    }
}

std::optional<StoredRow> PageFile::read_row(const Page& page, std::size_t at,
                                            std::vector<std::int64_t>& overflow) const {
    const auto size = read_varint(page.bytes, at);
    if (!size || *size > std::min(kLongestRow, static_cast<std::uint64_t>(bytes_->size())))
        return std::nullopt;
    const auto rowid = read_varint(page.bytes, at);
    if (!rowid) return std::nullopt;
    // Section 1.6: how much of a long row lies on the page itself.
    const std::size_t most = page_size_ - 35, least = (page_size_ - 12) * 32 / 255 - 23;
    const std::size_t total = *size;
    std::size_t here = total;
    if (total > most) {
        const std::size_t k = least + (total - least) % (page_size_ - 4);
        here = k <= most ? k : least;
    }
    if (at + here + (here < total ? 4 : 0) > page_size_) return std::nullopt;
    const auto from = page.bytes.begin() + static_cast<std::ptrdiff_t>(at);
    std::vector<std::byte> payload(from, from + static_cast<std::ptrdiff_t>(here));
    std::int64_t next = here < total ? static_cast<std::int64_t>(page.at(at + here, 4)) : 0;
    while (payload.size() < total) {
        const auto more = load(next);
        if (!more || next == 1 || overflow.size() > static_cast<std::size_t>(count_)) return std::nullopt;
        overflow.push_back(next);
        const std::size_t part = std::min(total - payload.size(), page_size_ - 4);
        payload.insert(payload.end(), more->bytes.begin() + 4,
                       more->bytes.begin() + static_cast<std::ptrdiff_t>(4 + part));
        next = static_cast<std::int64_t>(more->at(0, 4));
    }
    auto values = read_record(payload);
    if (!values) return std::nullopt;
    return StoredRow{static_cast<std::int64_t>(*rowid), std::move(*values)};
}

bool PageFile::read_leaf(const Page& page, const Take& take, Loss& loss) {
    std::vector<StoredRow> rows;
    std::vector<std::int64_t> overflow;
    for (std::size_t i = 0; i < page.cells(); ++i)
        if (auto row = read_row(page, page.cell(i), overflow)) rows.push_back(std::move(*row));
    const std::size_t taken = take(rows);
    if (2 * taken < page.cells()) return false;
    loss.rows += static_cast<std::int64_t>(page.cells() - taken);
    claim(page.number);
    for (const std::int64_t number : overflow)
        claim(number);
    return true;
}

PageFile::Loss PageFile::read_table(std::int64_t root, const Take& take) {
    Loss loss;
    std::vector<std::int64_t> to_visit{root}; // the last one next
    std::vector<bool> seen(claimed_.size());
    while (!to_visit.empty()) {
        const std::int64_t number = to_visit.back();
        to_visit.pop_back();
        if (number < 1 || number > count_ || is_claimed(number) || seen[static_cast<std::size_t>(number)]) {
            ++loss.pages;
            continue;
        }
        seen[static_cast<std::size_t>(number)] = true;
        const auto page = load(number);
        if (page && page->kind() == kLeafTable && page->whole()) {
            if (!read_leaf(*page, take, loss)) ++loss.pages;
        } else if (page && page->kind() == kInteriorTable && page->whole()) {
            to_visit.push_back(static_cast<std::int64_t>(page->at(page->head + 8, 4)));
            for (std::size_t i = page->cells(); i-- > 0;) {
                const std::size_t at = page->cell(i);
                if (at + 4 <= page_size_)
                    to_visit.push_back(static_cast<std::int64_t>(page->at(at, 4)));
                else
                    ++loss.pages;
            }
        } else {
            ++loss.pages;
        }
    }
    return loss;
}

void PageFile::read_strays(const Take& take) {
    for (std::int64_t number = 1; number <= count_; ++number) {
        if (is_claimed(number)) continue;
        const auto page = load(number);
        Loss ignored;
        if (page && page->kind() == kLeafTable && page->whole()) read_leaf(*page, take, ignored);
    }
}

} // namespace luft::project
