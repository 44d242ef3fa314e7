// Headers that make no sense, in the small formats: WAV, AU, FLAC, Ogg, MP3 tags, Matroska.
#include "made.h"
#include "pack.h"
#include "trial.h"

#include <catch2/catch.hpp>

using namespace luft::test;

namespace {

/// What a WAV file's format chunk says (RIFF, 1991); fields may contradict each other.
struct Wave {
    std::uint64_t tag = 1, channels = 1, rate = 8000, bytes_a_second = 16000, block = 2, bits = 16;
    std::uint64_t riff_size = 0xFFFF, data_size = 8000;
    std::string id = "RIFF", before_data = {};
    std::string samples = std::string(8000, '\x11');

    [[nodiscard]] std::string bytes() const {
        return id + little(riff_size, 4) + "WAVE" + "fmt " + little(16, 4) + little(tag, 2) +
               little(channels, 2) + little(rate, 4) + little(bytes_a_second, 4) + little(block, 2) +
               little(bits, 2) + before_data + "data" + little(data_size, 4) + samples;
    }
};

std::string ds64(std::uint64_t riff, std::uint64_t data, std::uint64_t count) {
    return "ds64" + little(28, 4) + little(riff, 8) + little(data, 8) + little(count, 8) + little(0, 4);
}

std::vector<Case> waves() {
    const std::vector<std::pair<std::string, Wave>> all = {
        {"no channel", {.channels = 0}},
        {"65535 channels", {.channels = 65535}},
        {"65535 channels in blocks to match", {.channels = 65535, .block = 131070 & 0xFFFF}},
        {"rate 0", {.rate = 0}},
        {"rate 1",
         {.rate = 1, .bytes_a_second = 2, .data_size = 4'000'000, .samples = std::string(4'000'000, '\x11')}},
        {"rate 2^32 - 1", {.rate = 0xFFFFFFFF}},
        {"rate 2^31", {.rate = 0x80000000}},
        {"rate 768,000", {.rate = 768'000}},
        {"block of 0 bytes", {.block = 0}},
        {"block of 65535 bytes", {.block = 65535}},
        {"0 bits", {.bits = 0}},
        {"1 bit", {.bits = 1}},
        {"65535 bits", {.bits = 65535}},
        {"0 bytes a second", {.bytes_a_second = 0}},
        {"2^32 - 1 bytes a second", {.bytes_a_second = 0xFFFFFFFF}},
        {"floats that are no numbers",
         {.tag = 3, .block = 4, .bits = 32, .samples = std::string(8000, '\xFF')}},
        {"floats without end",
         {.tag = 3,
          .block = 4,
          .bits = 32,
          .samples =
              [] {
                  std::string floats;
                  for (int i = 0; i < 2000; ++i)
                      floats += little(i % 2 ? 0x7F800000 : 0x7F7FFFFF, 4);
                  return floats;
              }()}},
        {"unknown kind", {.tag = 0xFFFE}},
        {"MPEG layer 3 in it", {.tag = 0x55}},
        {"data of 2^32 - 2 bytes", {.data_size = 0xFFFFFFFE}},
        {"data of no bytes", {.data_size = 0}},
        {"RIFF of no bytes", {.riff_size = 0}},
        {"a chunk before the data that lasts 4 GB", {.before_data = "LIST" + little(0xFFFFFFF0, 4) + "INFO"}},
        {"RF64 without its sizes", {.id = "RF64"}},
        {"RF64 of 2^63 bytes",
         {.riff_size = 0xFFFFFFFF,
          .data_size = 0xFFFFFFFF,
          .id = "RF64",
          .before_data = ds64(1ULL << 63, 1ULL << 63, 1ULL << 63)}},
        {"RF64 of 2^64 - 1 bytes",
         {.riff_size = 0xFFFFFFFF,
          .data_size = 0xFFFFFFFF,
          .id = "RF64",
          .before_data = ds64(~0ULL, ~0ULL, ~0ULL)}},
        {"big-endian RIFX", {.id = "RIFX"}},
    };
    std::vector<Case> cases;
    for (const auto& [label, wave] : all)
        cases.push_back({"WAV with " + label, [wave = wave] { return wave.bytes(); }});
    return cases;
}

/// A tag before the sound whose four 7-bit bytes claim `size` (id3.org, ID3v2.4, 3.1).
std::string id3(std::uint64_t size) {
    std::string seven;
    for (int i = 3; i >= 0; --i)
        seven += static_cast<char>(size >> (7 * i) & 0x7F);
    return "ID3" + std::string("\4\0\0", 3) + seven;
}

std::string flac(const std::string& stream_info, const std::string& more) {
    return "fLaC" + big(0x00, 1) + big(stream_info.size(), 3) + stream_info + more;
}

/// RFC 9639, 8.2: block sizes, frame sizes, then rate (20 bits), channels - 1 (3), bits - 1 (5), samples
/// (36).
std::string stream_info(std::uint64_t block, std::uint64_t rate, std::uint64_t samples) {
    return big(block, 2) + big(block, 2) + big(0, 3) + big(0xFFFFFF, 3) +
           big(rate << 44 | 1ULL << 41 | 15ULL << 36 | samples, 8) + std::string(16, '\0');
}

/// An element of Matroska (RFC 8794): its id, then a size of eight bytes, whatever it says.
std::string element(std::uint64_t id, int id_bytes, std::uint64_t size, const std::string& inside) {
    return big(id, id_bytes) + big(1ULL << 56 | (size & 0x00FFFFFFFFFFFFFFULL), 8) + inside;
}

std::vector<Case> others() {
    static const Made mp3 = made("a.mp3", false), mkv = made("a.mkv", false, "-c:a libvorbis"),
                      ogg = made("a.ogg", false, "-c:a libvorbis"), real_flac = made("a.flac", false);
    std::vector<Case> cases;
    for (const std::uint64_t size : {0ULL, 1ULL, 100'000ULL, 0x0FFFFFFFULL})
        cases.push_back({"MP3 with a tag of " + std::to_string(size) + " bytes",
                         [size] { return id3(size) + mp3.bytes; }});
    cases.push_back({"MP3 with 20,000 tags in a row", [] {
                         std::string tags;
                         for (int i = 0; i < 20'000; ++i)
                             tags += id3(0);
                         return tags + mp3.bytes;
                     }});
    cases.push_back({"MP3 with a picture of 268 MB in its tag", [] {
                         return id3(0x0FFFFFFF) + "APIC" + big(0x07FFFFFF, 4) +
                                std::string("\0\0\0image/png\0\3\0", 15) + mp3.bytes;
                     }});
    cases.push_back({"MP3 with a frame of 4 GB in its tag",
                     [] { return id3(1000) + "TIT2" + big(0xFFFFFFFF, 4) + mp3.bytes; }});
    for (const std::uint64_t rate : {0ULL, 1ULL, 0xFFFFFULL})
        for (const std::uint64_t samples : {0ULL, 0xFFFFFFFFFULL})
            cases.push_back(
                {"FLAC with rate " + std::to_string(rate) + " and " + std::to_string(samples) + " samples",
                 [rate, samples] {
                     return flac(stream_info(rate == 1 ? 0 : 65535, rate, samples),
                                 real_flac.bytes.substr(42));
                 }});
    cases.push_back(
        {"FLAC with a block of 16 MB",
         [] { return flac(stream_info(4096, 44100, 0), "\4" + big(0xFFFFFF, 3) + big(0xFFFFFFFF, 4)); }});
    cases.push_back({"FLAC with 2^32 - 1 comments", [] {
                         return flac(stream_info(4096, 44100, 0), "\4" + big(40, 3) + little(0, 4) +
                                                                      little(0xFFFFFFFF, 4) +
                                                                      std::string(32, '\0')) +
                                real_flac.bytes;
                     }});
    cases.push_back({"FLAC with a picture of 4 GB", [] {
                         return flac(stream_info(4096, 44100, 0),
                                     "\6" + big(64, 3) + big(3, 4) + big(9, 4) + "image/png" + big(0, 4) +
                                         big(65535, 4) + big(65535, 4) + big(32, 4) + big(0, 4) +
                                         big(0xFFFFFFFF, 4) + std::string(23, 'x')) +
                                real_flac.bytes;
                     }});
    // A page of Ogg (RFC 3533, 6) whose 255 segments are full, without end.
    cases.push_back({"Ogg whose first packet never ends", [] {
                         std::string all = ogg.bytes.substr(0, 28);
                         for (int i = 0; i < 300; ++i)
                             all += "OggS" + std::string(1, '\0') + std::string(1, i ? '\1' : '\2') +
                                    std::string(8, '\0') + little(7, 4) +
                                    little(static_cast<std::uint64_t>(i), 4) + std::string(4, '\0') +
                                    std::string(256, '\xFF') + std::string(255 * 255, 'v');
                         return all;
                     }});
    cases.push_back({"Ogg of 3000 beginnings", [] {
                         std::string all;
                         for (std::uint64_t i = 0; i < 3000; ++i)
                             all += std::string(ogg.bytes.substr(0, 58)).replace(14, 4, little(i, 4));
                         return all + ogg.bytes;
                     }});
    const std::string head = mkv.bytes.substr(0, mkv.bytes.find("\x18\x53\x80\x67"));
    for (const std::uint64_t size : {0ULL, 1ULL, 0x00FFFFFFFFFFFFFEULL, 0x00FFFFFFFFFFFFFFULL}) {
        cases.push_back({"Matroska with a segment of " + std::to_string(size) + " bytes", [head, size] {
                             return head + element(0x18538067, 4, size, mkv.bytes.substr(head.size() + 12));
                         }});
        for (const auto& [what, id] : {std::pair{"information", 0x1549A966ULL},
                                       {"tracks", 0x1654AE6BULL},
                                       {"cues", 0x1C53BB6BULL},
                                       {"cluster", 0x1F43B675ULL},
                                       {"tags", 0x1254C367ULL},
                                       {"attachments", 0x1941A469ULL}})
            cases.push_back({std::string("Matroska with ") + what + " of " + std::to_string(size) + " bytes",
                             [head, id = id, size] {
                                 return head +
                                        element(0x18538067, 4, 0x00FFFFFFFFFFFFFFULL,
                                                element(id, 4, size, mkv.bytes.substr(head.size() + 12)));
                             }});
    }
    cases.push_back({"Matroska nested 10,000 deep", [head] {
                         std::string tags;
                         for (int i = 0; i < 10'000; ++i) // a SimpleTag may hold another
                             tags += element(0x67C8, 2, 0x00FFFFFFFFFFFFFFULL, "");
                         return head + element(0x18538067, 4, 0x00FFFFFFFFFFFFFFULL,
                                               element(0x1254C367, 4, 0x00FFFFFFFFFFFFFFULL,
                                                       element(0x7373, 2, 0x00FFFFFFFFFFFFFFULL, tags)));
                     }});
    return cases;
}

} // namespace

TEST_CASE("a WAV file whose header makes no sense is refused or taken in bounded time and memory") {
    Trials trials("WAV file whose header makes no sense",
                  "0 and 65,535 channels, rates from 0 to 2^32 - 1, blocks of "
                  "no bytes, sizes that lie, RF64 of 2^64 - 1 bytes, samples that are no numbers");
    trials.give_some("a.wav", waves(), 3);
    WARN(trials.figures());
}

TEST_CASE("a sound file whose header makes no sense is refused or taken in bounded time and memory") {
    Trials trials(
        "Other sound file whose header makes no sense",
        "MP3 with tags of 268 MB and with thousands, FLAC with "
        "impossible rates, counts and pictures, Ogg packets without end, Matroska elements of any size");
    trials.give_some("a.media", others(), 4);
    WARN(trials.figures());
}
