// Whatever the bytes are, the answer is media or one clear line, in bounded time and memory, and nothing else
// is opened or printed.
#include "media/media.h"
#include "media/tools.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>
#include <fcntl.h>
#include <unistd.h>

#include <chrono>
#include <functional>
#include <random>

using namespace luft;
using namespace luft::media;
using namespace luft::media::test;
using namespace luft::test;

namespace {

/// The error that `work` throws; the test fails when there is none, or when it isn't one line that names the
/// file.
Error refusal(const std::string& name, const std::function<void()>& work) {
    try {
        work();
    } catch (const Error& e) {
        const std::string what = e.what();
        INFO(what);
        CHECK(what.find("'" + name + "'") != std::string::npos);
        CHECK(what.find('\n') == std::string::npos);
        CHECK(what.ends_with('.'));
        CHECK(what.size() < 250);
        return e;
    }
    FAIL("nothing was thrown for " << name);
    throw; // not reached
}

void refused(const std::string& name, const std::string& bytes, const std::string& reason) {
    for (const Error& e : {refusal(name, [&] { probe(in_memory(name, bytes)); }),
                           refusal(name, [&] { open_sound(in_memory(name, bytes)); }),
                           refusal(name, [&] { open_pictures(in_memory(name, bytes)); })}) {
        CHECK(e.fault() == Fault::unreadable);
        INFO(e.what());
        CHECK(std::string(e.what()).find(reason) != std::string::npos);
    }
}

std::string random_bytes(std::size_t count, unsigned seed) {
    std::mt19937 random(seed);
    std::string bytes(count, '\0');
    for (char& b : bytes)
        b = static_cast<char>(random());
    return bytes;
}

/// Reads all there is; true when it was media. Anything but an Error fails the test.
bool survives(const std::string& name, const std::string& bytes) {
    bool media = false;
    try {
        probe(in_memory(name, bytes));
        media = true;
    } catch (const Error&) {
    }
    try {
        const auto source = open_sound(in_memory(name, bytes));
        std::int64_t count = 0;
        while (const auto block = source->read())
            count += static_cast<std::int64_t>(block->samples.size());
        CHECK(count < 600'000'000);
    } catch (const Error&) {
    }
    try {
        const auto pictures = open_pictures(in_memory(name, bytes));
        for (const double t : {0.0, 0.7, 0.2})
            pictures->at(Seconds(t), 64);
    } catch (const Error&) {
    }
    return media;
}

/// A source whose medium fails at some place.
class Failing final : public ByteSource {
  public:
    Failing(std::string bytes, std::int64_t from) : bytes_("failing.wav", std::move(bytes)), from_(from) {}
    [[nodiscard]] std::int64_t size() const override { return bytes_.size(); }
    [[nodiscard]] std::string name() const override { return bytes_.name(); }
    std::size_t read_at(std::int64_t offset, std::span<std::byte> into) override {
        if (offset + static_cast<std::int64_t>(into.size()) > from_)
            throw Error(Fault::changed, "'failing.wav' has been pulled out.");
        return bytes_.read_at(offset, into);
    }

  private:
    Bytes bytes_;
    std::int64_t from_;
};

/// Number of bytes that `work` made anyone print to standard error.
std::int64_t printed(const Folder& folder, const std::function<void()>& work) {
    const int before = ::dup(2);
    const int file = ::open((folder / "said").c_str(), O_CREAT | O_RDWR | O_TRUNC, 0600);
    ::dup2(file, 2);
    work();
    ::dup2(before, 2);
    const auto size = ::lseek(file, 0, SEEK_END);
    ::close(before);
    ::close(file);
    return size;
}

} // namespace

TEST_CASE("an empty file is refused as empty") {
    refused("nothing.wav", "", "empty");
}

TEST_CASE("what isn't media is refused as such, whatever its name") {
    for (const char* name :
         {"a.wav", "a.mp3", "a.mp4", "a.aac", "a.txt", "a", "a.dat", "a.yuv", "a.gsm", "a.sw"}) {
        for (unsigned seed = 1; seed <= 3; ++seed)
            refused(name, random_bytes(40'000, seed), "not a");
        refused(name, "Dear coach, thank you for the lesson. I have practised the long phrase.\n", "not ");
        refused(name, std::string(5000, '\0'), "not ");
    }
}

TEST_CASE("playlists, scripts and session descriptions are refused and nothing they name is opened") {
    const Folder folder;
    ffmpeg("-f lavfi -i sine=d=1 " + quoted(folder / "real.ts") + " " + quoted(folder / "real.wav"));
    const std::string wav = (folder / "real.wav").string();
    const std::string hls =
        "#EXTM3U\n#EXT-X-VERSION:3\n#EXT-X-TARGETDURATION:2\n#EXT-X-MEDIA-SEQUENCE:0\n#EXTINF:1.0,\n" +
        (folder / "real.ts").string() + "\n#EXT-X-ENDLIST\n";
    const std::string concat = "ffconcat version 1.0\nfile '" + wav + "'\n";
    const std::string sdp =
        "v=0\no=- 0 0 IN IP4 127.0.0.1\ns=x\nc=IN IP4 127.0.0.1\nt=0 0\nm=audio 5004 RTP/AVP 97\n"
        "a=rtpmap:97 L16/44100/2\n";
    const std::string dash = "<?xml version=\"1.0\"?>\n<MPD xmlns=\"urn:mpeg:dash:schema:mpd:2011\" "
                             "profiles=\"urn:mpeg:dash:profile:isoff-on-demand:2011\" type=\"static\" "
                             "mediaPresentationDuration=\"PT1S\">"
                             "<Period><AdaptationSet mimeType=\"audio/mp4\"><Representation id=\"1\" "
                             "bandwidth=\"1000\"><BaseURL>" +
                             wav + "</BaseURL></Representation></AdaptationSet></Period></MPD>\n";
    // ffmpeg itself takes them for what they are, so that the refusal is ours.
    write_all(folder / "check.m3u8", hls);
    write_all(folder / "check.ffconcat", concat);
    CHECK(ffprobe(folder / "check.m3u8", "", "format=format_name").at(0) == "hls");
    CHECK(
        run("ffprobe -v error -safe 0 -show_entries format=format_name " + quoted(folder / "check.ffconcat"))
            .find("concat") != std::string::npos);
    for (const char* name : {"a.m3u8", "a.mp4", "a"}) {
        refused(name, hls, "never followed");
        refused(name, concat, "never followed");
        refused(name, sdp, "never followed");
        refused(name, dash, "never followed");
    }
    refused("a.m3u", "#EXTM3U\n" + wav + "\n", "not a");
}

TEST_CASE("pictures, captions and names with a pattern are refused") {
    const Folder folder;
    ffmpeg("-f lavfi -i testsrc=size=64x48 -frames:v 1 " + quoted(folder / "a.png") + " -frames:v 1 " +
           quoted(folder / "a.jpg") + " -frames:v 1 " + quoted(folder / "a.bmp"));
    for (const char* file : {"a.png", "a.jpg", "a.bmp"})
        refused(file, read_all(folder / file), "still picture");
    refused("a.srt", "1\n00:00:01,000 --> 00:00:02,000\nBreathe here.\n", "text");
    refused("a.vtt", "WEBVTT\n\n00:01.000 --> 00:02.000\nBreathe here.\n", "text");
    refused("a%03d.png", read_all(folder / "a.png"), "still picture");
}

TEST_CASE("the name is never taken for an address") {
    const Folder folder;
    ffmpeg("-f lavfi -i sine=d=0.5 " + quoted(folder / "a.wav"));
    for (const char* name :
         {"http://127.0.0.1/a.wav", "file:/etc/passwd", "concat:a|b", "-i", "a%d.wav", "../../x.wav"})
        CHECK(probe(in_memory(name, read_all(folder / "a.wav"))).audio);
}

TEST_CASE("a video without sound says so, and so does a sound without pictures") {
    const Folder folder;
    ffmpeg("-f lavfi -i testsrc=size=64x48:d=0.5 -f lavfi -i sine=d=0.5 -map 0 -c:v libx264 " +
           quoted(folder / "mute.mp4") + " -map 1 " + quoted(folder / "a.wav"));
    const Error mute = refusal("mute.mp4", [&] { open_sound(open_file(folder / "mute.mp4")); });
    CHECK(mute.fault() == Fault::unreadable);
    CHECK(std::string(mute.what()).find("no sound") != std::string::npos);
    const Error blind = refusal("a.wav", [&] { open_pictures(open_file(folder / "a.wav")); });
    CHECK(std::string(blind.what()).find("no moving picture") != std::string::npos);
}

TEST_CASE("a sound file that holds no sound fails on the first read") {
    const Folder folder;
    write_wav(folder / "a.wav", {}, 44100, 1);
    const auto source = open_sound(open_file(folder / "a.wav"));
    refusal("a.wav", [&] { source->read(); });
}

TEST_CASE("a truncated file plays what is there, or says what is wrong") {
    const Folder folder;
    const std::string video = " -map 0 -map 1 -c:v libx264 ";
    ffmpeg("-f lavfi -i anoisesrc=d=3:a=0.1:r=44100:seed=1 -f lavfi -i testsrc=size=64x48:d=3 -map 0 " +
           quoted(folder / "a.wav") + " -map 0 " + quoted(folder / "a.flac") + " -map 0 " +
           quoted(folder / "a.mp3") + " -map 0 " + quoted(folder / "a.ogg") + " -map 0 " +
           quoted(folder / "a.opus") + " -map 0 " + quoted(folder / "a.aac") +
           " -map 0 -movflags faststart " + quoted(folder / "a.m4a") + video + quoted(folder / "late.mp4") +
           video + "-movflags faststart " + quoted(folder / "a.mp4") + video + quoted(folder / "a.mkv") +
           video + quoted(folder / "a.ts"));
    for (const char* file : {"a.wav", "a.flac", "a.mp3", "a.ogg", "a.opus", "a.aac", "a.m4a", "a.mp4",
                             "a.mkv", "a.ts", "late.mp4"}) {
        INFO(file);
        const std::string whole = read_all(folder / file);
        for (const double share : {0.0005, 0.002, 0.01, 0.03, 0.1, 0.3, 0.5, 0.77, 0.97})
            survives(file,
                     whole.substr(0, static_cast<std::size_t>(share * static_cast<double>(whole.size()))));
        const std::string most = whole.substr(0, whole.size() * 6 / 10);
        if (std::string(file) == "late.mp4") { // the index is at the end
            const Error e = refusal(file, [&] { open_sound(in_memory(file, most)); });
            CHECK(std::string(e.what()).find("cut off") != std::string::npos);
            continue;
        }
        const auto source = open_sound(in_memory(file, most));
        const Heard heard = hear(*source);
        CHECK(heard.length() > 0.9);
        CHECK(heard.length() < 2.6);
    }
}

TEST_CASE("damage inside a file is silence of the same length") {
    const Folder folder;
    // Noise, so that half of the bytes are half of the time; the damage is in it, the sweep comes later.
    std::vector<float> sound = sound_with_sweep(3.2, 4.0, 48000, 1);
    std::minstd_rand random(1);
    for (std::size_t i = 0; i < 144000; ++i)
        sound[i] = 0.1F * (static_cast<float>(random() % 2001) / 1000 - 1);
    write_wav(folder / "in.wav", sound, 48000, 1);
    const std::vector<std::string> files{"a.flac", "a.mkv", "a.m4a", "a.ogg", "a.ts"};
    std::string all = "-i " + quoted(folder / "in.wav");
    for (const std::string& file : files)
        all += (file == "a.m4a"   ? " -movflags faststart "
                : file == "a.mkv" ? " -cluster_time_limit 500 " // a damaged cluster is lost as a whole
                                  : " ") +
               quoted(folder / file);
    ffmpeg(all);
    for (const std::string& file : files) {
        INFO(file);
        std::string bytes = read_all(folder / file);
        bytes.replace(bytes.size() * 2 / 5, bytes.size() / 20, random_bytes(bytes.size() / 20, 9));
        const auto source = open_sound(in_memory(file, bytes));
        const Heard heard = hear(*source);
        const double delay = file == "a.ts" ? 481.0 / 48000 : 0; // MPEG layer II, see sound_times_test.cpp
        CHECK(where_is_sweep(heard, 3.2) == Approx(3.2 + delay).margin(0.005));
        CHECK(heard.length() == Approx(4.0).margin(0.05));
    }
}

TEST_CASE("files with flipped bytes are read or refused in bounded time, and nothing is printed") {
    const Folder folder;
    ffmpeg("-f lavfi -i sine=d=0.6 -f lavfi -i testsrc=size=64x48:d=0.6 -map 0 " + quoted(folder / "a.wav") +
           " -map 0 " + quoted(folder / "a.mp3") + " -map 0 " + quoted(folder / "a.flac") + " -map 0 " +
           quoted(folder / "a.ogg") + " -map 0 -map 1 -c:v libx264 " + quoted(folder / "a.mp4") +
           " -map 0 -map 1 -c:v libx264 " + quoted(folder / "a.mkv") +
           " -map 0 -map 1 -c:v mpeg2video -c:a mp2 " + quoted(folder / "a.ts"));
    const auto start = std::chrono::steady_clock::now();
    const std::int64_t said = printed(folder, [&] {
        for (const char* file : {"a.wav", "a.mp3", "a.flac", "a.ogg", "a.mp4", "a.mkv", "a.ts"}) {
            const std::string whole = read_all(folder / file);
            for (unsigned seed = 0; seed < 8; ++seed) {
                std::mt19937 random(seed);
                std::string bytes = whole;
                for (int i = 0; i < 12; ++i)
                    bytes[random() % (seed % 2 == 0 ? std::min<std::size_t>(bytes.size(), 600)
                                                    : bytes.size())] = static_cast<char>(random());
                survives(file, bytes);
            }
        }
    });
    CHECK(said == 0);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    CHECK(took.count() < 60); // a guard against hanging, generous for a loaded machine
}

TEST_CASE("an MP4 header that claims 80 million pictures is not given the memory for their index") {
    const Folder folder;
    ffmpeg("-f lavfi -i testsrc=size=64x48:d=0.2 -c:v mpeg4 -bf 0 " + quoted(folder / "a.mp4"));
    std::string bytes = read_all(folder / "a.mp4");
    // ISO/IEC 14496-12: 'stsz' holds version, one size for all, and the number of samples; 'stts' runs of
    // number and length; 'stsc' how many samples a chunk has; without 'stss' every sample is a key picture.
    const auto put = [&](const char* box, std::size_t at, std::uint32_t value) {
        const std::size_t start = bytes.find(box);
        REQUIRE(start != std::string::npos);
        for (std::size_t i = 0; i < 4; ++i)
            bytes[start + at + i] = static_cast<char>(value >> (24 - 8 * i));
    };
    constexpr std::uint32_t kClaim = 80'000'000;
    put("stsz", 8, 2);
    put("stsz", 12, kClaim);
    put("stts", 12, kClaim);
    put("stsc", 8, 1);
    put("stsc", 16, kClaim);
    bytes.replace(bytes.find("stss"), 4, "free");
    survives("a.mp4", bytes);
    // The ffprobe program takes 1.9 GB for this file.
    const std::string peak = run("grep VmHWM /proc/" + std::to_string(::getpid()) + "/status");
    CHECK(std::stol(peak.substr(peak.find_first_of("0123456789"))) < 800'000); // kB
}

TEST_CASE("a recording that lasts longer than a day is refused, even when its header doesn't say so") {
    /// 8-bit samples at 4000 Hz, for 25 hours.
    class Long final : public ByteSource {
      public:
        Long() {
            const Folder folder;
            write_wav(folder / "a.wav", {}, 4000, 1);
            head_ = read_all(folder / "a.wav");
            head_.replace(28, 4, std::string("\xA0\x0F\0\0", 4)).replace(32, 4, std::string("\1\0\x08\0", 4));
            head_.replace(40, 4, "\xFF\xFF\xFF\xFF"); // as in a stream
        }
        [[nodiscard]] std::int64_t size() const override { return 44 + std::int64_t{25} * 3600 * 4000; }
        [[nodiscard]] std::string name() const override { return "long.wav"; }
        std::size_t read_at(std::int64_t offset, std::span<std::byte> into) override {
            const auto count =
                std::min<std::int64_t>(static_cast<std::int64_t>(into.size()), size() - offset);
            for (std::int64_t i = 0; i < count; ++i)
                into[static_cast<std::size_t>(i)] = std::byte(
                    offset + i < 44 ? static_cast<unsigned char>(head_[static_cast<std::size_t>(offset + i)])
                                    : 128);
            return count > 0 ? static_cast<std::size_t>(count) : 0;
        }

      private:
        std::string head_;
    };
    CHECK(refusal("long.wav", [] { probe(std::make_unique<Long>()); }).fault() == Fault::unsupported);
    const auto source = open_sound(std::make_unique<Long>());
    CHECK(refusal("long.wav", [&] {
              while (source->read()) {
              }
          }).fault() == Fault::unsupported);
}

TEST_CASE("a rate too low for a voice is refused, and the telephone's isn't") {
    const Folder folder;
    write_wav(folder / "a.wav", sound_with_sweep(0.2, 1.0, 100, 1), 100, 1);
    CHECK(refusal("a.wav", [&] { probe(open_file(folder / "a.wav")); }).fault() == Fault::unreadable);
    write_wav(folder / "b.wav", sound_with_sweep(0.2, 1.0, 8000, 1), 8000, 1);
    CHECK(probe(open_file(folder / "b.wav")).audio);
}

TEST_CASE("what the medium says when it fails reaches the caller as it was said") {
    const Folder folder;
    write_wav(folder / "a.wav", sound_with_sweep(0.2, 4.0, 44100, 2), 44100, 2);
    const std::string bytes = read_all(folder / "a.wav");
    const auto fault = [](const std::function<void()>& work) {
        try {
            work();
        } catch (const Error& e) {
            return e.fault();
        }
        return Fault::internal;
    };
    CHECK(fault([&] { open_sound(std::make_unique<Failing>(bytes, 10)); }) == Fault::changed);
    CHECK(fault([&] {
              const auto source = open_sound(std::make_unique<Failing>(bytes, 400'000));
              while (source->read()) {
              }
          }) == Fault::changed);
}
