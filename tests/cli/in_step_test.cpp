// Two performances written as one sound, read back by the ffmpeg program.
#include "cli/desk.h"
#include "tools/files.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstring>

using namespace luft;
using namespace luft::cli::test;

namespace {

constexpr std::size_t kRate = 44100;

/// One side of a file, decoded.
std::vector<float> side(const std::filesystem::path& folder, const std::string& file, int which) {
    const auto raw = folder / "side.raw";
    luft::test::run("ffmpeg -nostdin -v error -y -i " + luft::test::quoted(folder / file) +
                    " -af 'pan=mono|c0=c" + std::to_string(which) + "' -ar 44100 -f f32le " +
                    luft::test::quoted(raw));
    const std::string bytes = luft::test::read_all(raw);
    std::vector<float> out(bytes.size() / sizeof(float));
    std::memcpy(out.data(), bytes.data(), out.size() * sizeof(float));
    return out;
}

/// RMS every 10 ms.
std::vector<double> levels(const std::vector<float>& x) {
    std::vector<double> out;
    for (std::size_t i = 0; i + kRate / 100 <= x.size(); i += kRate / 100) {
        double power = 0;
        for (std::size_t n = i; n < i + kRate / 100; ++n)
            power += x[n] * x[n];
        out.push_back(std::sqrt(power / (kRate / 100.0)));
    }
    return out;
}

/// How alike two courses of level are where the second is looked at so much later; 1 = the same.
double alike(const std::vector<double>& a, const std::vector<double>& b, int later) {
    double ab = 0, aa = 0, bb = 0;
    for (int i = 100; i + 100 < static_cast<int>(std::min(a.size(), b.size())); ++i) {
        const double x = a[static_cast<std::size_t>(i)], y = b[static_cast<std::size_t>(i + later)];
        ab += x * y, aa += x * x, bb += y * y;
    }
    return ab / std::sqrt(aa * bb);
}

} // namespace

TEST_CASE("Two performances are written in step, the first left and the second right") {
    const Desk desk;
    // The same singing, a fourth lower and slower, and softer.
    run("ffmpeg", {"-nostdin", "-v", "error", "-i", desk.folder / "sung.wav", "-af",
                   "asetrate=33039,aresample=44100,volume=0.5", desk.folder / "low.wav"});
    desk("add", {desk.folder / "low.wav", "--label", "B", "--voice", "alone"});
    const auto sung = side(desk.folder.path(), "sung.wav", 0);
    CHECK(
        desk("compare", {"A", "B", "--in-step", desk.folder / "both.wav"}).find("A on the left, B on the") !=
        std::string::npos);
    const auto left = side(desk.folder.path(), "both.wav", 0),
               right = side(desk.folder.path(), "both.wav", 1);
    REQUIRE(left.size() == sung.size());
    REQUIRE(right.size() == sung.size());
    for (std::size_t i = 0; i < left.size(); i += 101) // 6 dB down, to the softer one
        REQUIRE(left[i] == Approx(0.5 * sung[i]).margin(0.01));
    const auto a = levels(left), b = levels(right);
    int best = -10;
    for (int later = -10; later <= 10; ++later)
        if (alike(a, b, later) > alike(a, b, best)) best = later;
    CHECK(std::abs(best) <= 1); // 10 ms
    CHECK(alike(a, b, best) > 0.9);

    desk("compare", {"A", "B", "--in-step", desk.folder / "slow.flac", "--speed", "0.5", "--transposed"});
    CHECK(static_cast<double>(side(desk.folder.path(), "slow.flac", 1).size()) ==
          Approx(2.0 * static_cast<double>(sung.size())).epsilon(0.001));
}

TEST_CASE("What can't be written in step is refused, and nothing is left behind") {
    const Desk desk;
    run("ffmpeg", {"-nostdin", "-v", "error", "-i", desk.folder / "sung.wav", desk.folder / "again.wav"});
    desk("add", {desk.folder / "again.wav", "--label", "B", "--voice", "alone"});
    CHECK(desk.tried("compare", {"A", "B", "--speed", "0.5"}).status == 2);
    CHECK(desk.tried("compare", {"A", "B", "--in-step", desk.folder / "x.wav", "--speed", "2"}).status == 2);
    CHECK(desk.tried("compare", {"A", "B", "--in-step", desk.folder / "x.txt"}).status == 1);
    CHECK(desk.tried("compare", {"A", "B", "--in-step", desk.folder / "sung.wav"}).status == 1);
    for (const auto& entry : std::filesystem::directory_iterator(desk.folder.path()))
        CHECK_FALSE(entry.path().filename().string().starts_with("x."));
}
