// Streams without an end, devices, loops of links, and files that others name: none is opened, none is waited
// for.
#include "made.h"
#include "tools/files.h"
#include "tools/programs.h"
#include "trial.h"

#include <catch2/catch.hpp>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>

#include <cstring>
#include <filesystem>
#include <fstream>
#include <thread>

using namespace luft::test;

namespace {

namespace fs = std::filesystem;

void make_socket(const std::string& file) {
    sockaddr_un address{};
    address.sun_family = AF_UNIX;
    std::strncpy(static_cast<char*>(address.sun_path), file.c_str(), sizeof address.sun_path - 1);
    const int fd = ::socket(AF_UNIX, SOCK_STREAM, 0);
    REQUIRE(::bind(fd, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0);
    ::close(fd);
}

} // namespace

TEST_CASE("what has no end is refused at once") {
    Trials trials(
        "Endless stream, device, folder or loop of links in place of a recording",
        "named pipe without a writer, /dev/zero, /dev/urandom, a terminal, a folder, a socket, links that "
        "go round");
    const Folder folder;
    REQUIRE(::mkfifo((folder / "pipe.wav").c_str(), 0600) == 0);
    make_socket(folder / "socket.wav");
    fs::create_directory(folder / "folder.wav");
    fs::create_symlink("b.wav", folder / "a.wav");
    fs::create_symlink("a.wav", folder / "b.wav");
    fs::create_symlink("/dev/zero", folder / "zero.wav");
    for (const char* name : {"pipe.wav", "socket.wav", "folder.wav", "a.wav", "zero.wav"})
        trials.refuse(folder / name, name);
    for (const char* name :
         {"/dev/zero", "/dev/urandom", "/dev/null", "/dev/ptmx", "/proc/self/mem", "/proc/self/environ"})
        trials.refuse(name, name);
}

TEST_CASE("a file that grows while it is read ends where it ended at first") {
    Trials trials("Recording that grows while it is listened to",
                  "another program appends to it without a pause");
    const Made wave = made("a.wav", false);
    const Folder folder;
    for (int i = runs(1, 10); i > 0; --i) {
        std::string bytes = wave.bytes;
        bytes.replace(4, 4, "\xFF\xFF\xFF\xFF").replace(bytes.find("data") + 4, 4, "\xFF\xFF\xFF\xFF");
        write_all(folder / "a.wav", bytes);
        std::jthread grow([&](const std::stop_token& stop) {
            std::ofstream more(folder / "a.wav", std::ios::binary | std::ios::app);
            for (std::size_t n = 0; !stop.stop_requested() && n < (64U << 20); n += bytes.size()) {
                more << bytes;
                more.flush();
                std::this_thread::sleep_for(std::chrono::milliseconds(1));
            }
        });
        trials.row().run();
        Child child(LUFT_PROGRAM, {"listen", folder / "a.wav"});
        const auto outcome = child.wait_for(kMostTime);
        trials.row().must(outcome && outcome->status == 0, "a growing file isn't taken as it was");
    }
}

TEST_CASE("names and files that lead elsewhere are refused, and nothing they name is opened") {
    Trials trials(
        "Playlist, manifest or address in place of a recording",
        "M3U8, concat lists, SDP, DASH, AviSynth and pattern names, addresses with http:, concat:, subfile:, "
        "file:, data: and pipe:; the file that they name is a pipe, which would tell an opening");
    const Folder folder;
    REQUIRE(::mkfifo((folder / "other.wav").c_str(), 0600) == 0); // whoever opens it hangs, and is found out
    const std::string other = folder / "other.wav";
    const std::string dash =
        "<?xml version=\"1.0\"?>\n<MPD xmlns=\"urn:mpeg:dash:schema:mpd:2011\" "
        "profiles=\"urn:mpeg:dash:profile:isoff-on-demand:2011\" type=\"static\"><Period>"
        "<AdaptationSet mimeType=\"audio/mp4\"><Representation id=\"1\" bandwidth=\"1000\">"
        "<BaseURL>" +
        other + "</BaseURL></Representation></AdaptationSet></Period></MPD>\n";
    const std::vector<std::pair<const char*, std::string>> lists = {
        {"a.m3u8", "#EXTM3U\n#EXT-X-TARGETDURATION:2\n#EXTINF:1.0,\n" + other + "\n#EXT-X-ENDLIST\n"},
        {"a.m3u", "#EXTM3U\n" + other + "\n"},
        {"a.ffconcat", "ffconcat version 1.0\nfile '" + other + "'\n"},
        {"a.sdp", "v=0\no=- 0 0 IN IP4 127.0.0.1\ns=x\nc=IN IP4 127.0.0.1\nt=0 0\nm=audio 5004 RTP/AVP 97\n"
                  "a=rtpmap:97 L16/44100/2\n"},
        {"a.mpd", dash},
        {"a.avs", "AudioDub(\"" + other + "\")\n"},
        {"a.pls", "[playlist]\nFile1=" + other + "\nNumberOfEntries=1\n"},
        {"a.asx", "<asx version=\"3.0\"><entry><ref href=\"" + other + "\"/></entry></asx>\n"},
        {"a.ram", "rtsp://127.0.0.1/" + other + "\n"},
        {"a.smil", "<smil><body><audio src=\"" + other + "\"/></body></smil>\n"}};
    for (const auto& [name, text] : lists) {
        for (const std::string& as : {std::string(name), std::string("cover.mp4")}) {
            write_all(folder / as, text);
            trials.refuse(folder / as, name);
            fs::remove(folder / as);
        }
    }
    for (const std::string& address : std::vector<std::string>{
             "http://127.0.0.1/a.wav", "https://127.0.0.1/a.wav", "rtmp://127.0.0.1/a",
             "udp://127.0.0.1:5004", "concat:" + other + "|" + other, "subfile,,start,0,end,10,,:" + other,
             "file:" + other, "crypto:" + other, "cache:" + other, "async:" + other,
             "data:audio/wav;base64,UklGRg==", "pipe:0", "-", "a%03d.wav", "lavfi:sine", "tee:" + other,
             other + "|"})
        trials.refuse(address, address);
    // A movie whose samples lie in another file (QuickTime's alias in 'dref').
    Made movie = made("a.mov", false, "-c:a pcm_s16le");
    const std::size_t url = movie.bytes.find("url ");
    REQUIRE(url != std::string::npos);
    movie.bytes[url + 7] = '\0'; // no more 'in this very file'
    trials.give("a.mov", "samples in another file", movie.bytes);
}
