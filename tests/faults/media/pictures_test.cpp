// Pictures that claim to be huge: in the movie, and on the cover.
#include "boxes.h"
#include "made.h"
#include "pack.h"
#include "tools/files.h"
#include "trial.h"

#include <catch2/catch.hpp>

using namespace luft::test;

namespace {

/// A JPEG frame header that claims another size (ITU-T T.81, B.2.2), wherever one is.
std::string jpeg_claims(std::string bytes, std::uint64_t width, std::uint64_t height) {
    for (std::size_t at = bytes.find("\xFF\xC0"); at != std::string::npos;
         at = bytes.find("\xFF\xC0", at + 2))
        bytes.replace(at + 5, 4, big(height, 2) + big(width, 2));
    return bytes;
}

/// The size in the description of a movie's picture (ISO/IEC 14496-12, 12.1.3).
std::string track_claims(std::string bytes, std::uint64_t width, std::uint64_t height) {
    for (const Box& box : boxes_of(bytes))
        if (box.kind == "stsd" && box.size > 60)
            bytes.replace(box.at + 16 + 32, 4, big(width, 2) + big(height, 2));
    return bytes;
}

/// A PNG whose header claims a size (ISO/IEC 15948, 11.2.2); its checksum is right only by chance.
std::string png_claims(std::uint64_t width, std::uint64_t height) {
    Made png = made("a.png", true, "-map 1 -frames:v 1");
    return png.bytes.replace(16, 8, big(width, 4) + big(height, 4));
}

std::string mp3_with_cover(const std::string& picture) {
    const std::string frame = std::string("\0image/png\0\3\0", 13) + picture;
    const std::string tag = "APIC" + big(frame.size(), 4) + std::string(2, '\0') + frame;
    std::string seven;
    for (int i = 3; i >= 0; --i)
        seven += static_cast<char>(tag.size() >> (7 * i) & 0x7F);
    return "ID3" + std::string("\3\0\0", 3) + seven + tag + made("a.mp3", false).bytes;
}

std::vector<Case> huge() {
    static const Made mjpeg = made("a.mov", true, "-c:v mjpeg -c:a pcm_s16le"),
                      h264 = made("a.mp4", true, "-c:v libx264 -c:a aac"),
                      mpeg4 = made("a.mp4", true, "-c:v mpeg4 -c:a aac"),
                      png = made("a.mov", true, "-c:v png -c:a pcm_s16le"),
                      raw = made("a.avi", true, "-c:v rawvideo -c:a pcm_s16le");
    std::vector<Case> cases;
    for (const auto& [w, h] : {std::pair{65535ULL, 65535ULL},
                               {65535ULL, 1ULL},
                               {1ULL, 65535ULL},
                               {0ULL, 0ULL},
                               {16384ULL, 16384ULL},
                               {7680ULL, 4320ULL}}) {
        const std::string size = std::to_string(w) + "x" + std::to_string(h);
        cases.push_back({"JPEG pictures of " + size, [=] { return jpeg_claims(mjpeg.bytes, w, h); }});
        cases.push_back({"JPEG pictures and track of " + size,
                         [=] { return track_claims(jpeg_claims(mjpeg.bytes, w, h), w, h); }});
        cases.push_back({"H.264 track of " + size, [=] { return track_claims(h264.bytes, w, h); }});
        cases.push_back({"MPEG-4 track of " + size, [=] { return track_claims(mpeg4.bytes, w, h); }});
        cases.push_back({"PNG track of " + size, [=] { return track_claims(png.bytes, w, h); }});
        cases.push_back({"bare pictures of " + size, [=] {
                             std::string bytes = raw.bytes; // BITMAPINFOHEADER after 'strf' and its size
                             return bytes.replace(bytes.find("strf") + 12, 8, little(w, 4) + little(h, 4));
                         }});
    }
    for (const auto& [w, h] :
         {std::pair{65535ULL, 65535ULL}, {0x7FFFFFFFULL, 0x7FFFFFFFULL}, {0xFFFFFFFFULL, 1ULL}, {0ULL, 0ULL}})
        cases.push_back({"cover picture of " + std::to_string(w) + "x" + std::to_string(h),
                         [=] { return mp3_with_cover(png_claims(w, h)); }});
    return cases;
}

/// A movie is taken, moments and a script are made, and its stills are asked for.
void ask_for_stills(Trials& trials, const Case& one) {
    const Folder folder;
    write_all(folder / "a.mov", one.bytes());
    const std::string project = folder / "a.luft";
    const auto program = [&](const std::vector<std::string>& arguments) {
        return Child(LUFT_PROGRAM, arguments).wait().status;
    };
    REQUIRE(program({"new", project, "--title", "Three lines"}) == 0);
    if (program({"add", project, folder / "a.mov", "--label", "A", "--partial"}) != 0) return;
    REQUIRE(program({"script", project, "add", "--kind", "stop", "--at", "0.3", "--text", "Listen."}) == 0);
    trials.row().run();
    Child child(LUFT_PROGRAM,
                {"export", project, "--performance", "A", "--as", "stills", "--out", folder / "stills"});
    const auto outcome = child.wait_for(6 * kMostTime);
    trials.row().must(outcome && outcome->status <= 1 && outcome->peak_kb < kMostMegabytes * 1024,
                      one.label + ": stills");
    if (outcome && outcome->status == 1)
        trials.row().must(outcome->err.starts_with("luftpause: "), one.label + ": no clear line");
}

} // namespace

TEST_CASE("pictures that claim to be huge are refused or left out in bounded time and memory") {
    Trials trials("Pictures that claim to be huge",
                  "movies and cover pictures of up to 65,535 x 65,535 and 2^31 x 2^31 "
                  "pixels (JPEG, PNG, H.264, MPEG-4, bare); stills are asked for, too");
    const std::vector<Case> cases = huge();
    trials.give_some("a.media", cases, 3);
    for (std::size_t i = 0; i < cases.size(); i += static_cast<std::size_t>(runs(13, 1)))
        ask_for_stills(trials, cases[i]);
    WARN(trials.figures());
}
