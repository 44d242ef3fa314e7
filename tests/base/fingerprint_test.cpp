#include "base/fingerprint.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <cstring>

using namespace luft;
using namespace luft::test;

namespace {

class Bytes final : public ByteSource {
  public:
    explicit Bytes(std::string bytes) : bytes_(std::move(bytes)) {}
    [[nodiscard]] std::int64_t size() const override { return static_cast<std::int64_t>(bytes_.size()); }
    [[nodiscard]] std::string name() const override { return "bytes"; }
    std::size_t read_at(std::int64_t offset, std::span<std::byte> into) override {
        const auto from = std::min(static_cast<std::size_t>(offset), bytes_.size());
        const std::size_t n = std::min(into.size(), bytes_.size() - from);
        std::memcpy(into.data(), bytes_.data() + from, n);
        return n;
    }

  private:
    std::string bytes_;
};

std::string fingerprint_of(std::string text) {
    Bytes bytes(std::move(text));
    return fingerprint(bytes);
}

} // namespace

TEST_CASE("the fingerprint is the SHA-256 of FIPS 180-4's examples") {
    // NIST's example values for SHA-256: "abc", the 448-bit message, and a million times "a".
    CHECK(fingerprint_of("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(fingerprint_of("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(fingerprint_of(std::string(1000000, 'a')) ==
          "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
    CHECK(fingerprint_of("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("the fingerprint of a file of several chunks is what sha256sum says") {
    std::string text;
    for (std::int64_t i = 0; text.size() < 3'500'000; ++i)
        text += std::to_string(i * 7919) + "\n";
    const Folder folder;
    write_all(folder / "a.txt", text);
    const std::string said = run("sha256sum " + quoted(folder / "a.txt"));
    REQUIRE(said.size() > 64);
    CHECK(fingerprint(*open_file(folder / "a.txt")) == said.substr(0, 64));
}

TEST_CASE("one bit more is another fingerprint, and reading can be stopped") {
    CHECK(fingerprint_of(std::string(100, 'a')) != fingerprint_of(std::string(99, 'a') + 'b'));
    Bytes bytes(std::string(3 << 20, 'x'));
    std::stop_source stop;
    double last = 0;
    const Progress progress(
        [&](double done, std::string_view) {
            last = done;
            stop.request_stop();
        },
        stop.get_token());
    CHECK_THROWS_AS(fingerprint(bytes, progress), Stopped);
    CHECK(last > 0);
    CHECK(last < 0.5);
}
