#include "base/fingerprint.h"

#include <nettle/sha2.h>

#include <array>
#include <vector>

namespace luft {

std::string fingerprint(ByteSource& bytes, const Progress& progress) {
    sha256_ctx context;
    sha256_init(&context);
    std::vector<std::byte> chunk(1 << 20);
    std::int64_t offset = 0;
    while (const std::size_t got = bytes.read_at(offset, chunk)) {
        sha256_update(&context, got, reinterpret_cast<const std::uint8_t*>(chunk.data()));
        offset += static_cast<std::int64_t>(got);
        progress.step(static_cast<double>(offset) /
                          static_cast<double>(std::max<std::int64_t>(bytes.size(), 1)),
                      "reading the file");
    }
    std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
    sha256_digest(&context, digest.size(), digest.data());
    std::string hex;
    for (const std::uint8_t b : digest) {
        constexpr const char* kDigits = "0123456789abcdef";
        hex += kDigits[b >> 4];
        hex += kDigits[b & 15];
    }
    return hex;
}

} // namespace luft
