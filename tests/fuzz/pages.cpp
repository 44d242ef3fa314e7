// Any bytes as the pages of a database: every table that its first page names, and the stray rows.
#include "fuzz/target.h"
#include "project/page_file.h"

#include <algorithm>
#include <cstring>

using namespace luft;
using namespace luft::project;

namespace {

class Memory final : public ByteSource {
  public:
    explicit Memory(std::string_view bytes) : bytes_(bytes) {}
    [[nodiscard]] std::int64_t size() const override { return static_cast<std::int64_t>(bytes_.size()); }
    [[nodiscard]] std::string name() const override { return "memory"; }
    std::size_t read_at(std::int64_t offset, std::span<std::byte> into) override {
        if (offset < 0 || offset >= size()) return 0;
        const std::string_view from = bytes_.substr(static_cast<std::size_t>(offset), into.size());
        std::memcpy(into.data(), from.data(), from.size());
        return from.size();
    }

  private:
    std::string_view bytes_;
};

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    PageFile pages(std::make_unique<Memory>(fuzz::text_of(data, size)));
    std::vector<std::int64_t> roots;
    std::size_t values = 0;
    const auto take = [&](const std::vector<StoredRow>& rows) {
        for (const StoredRow& row : rows) {
            values += row.values.size();
            if (row.values.size() == 5)
                if (const auto* root = std::get_if<std::int64_t>(&row.values[3])) roots.push_back(*root);
        }
        return rows.size();
    };
    pages.read_table(1, take);
    const std::vector<std::int64_t> named = roots;
    for (const std::int64_t root : named)
        pages.read_table(root, take);
    pages.read_strays(take);
    // Each page is read once as what it is, and once more while it isn't known to be what it was taken for.
    fuzz::demand(values <= 8 * (size + 1) * (named.size() + 2), "rows don't multiply");
    return 0;
}
