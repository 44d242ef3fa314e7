#include "made.h"

#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

namespace luft::test {

Made made(const std::string& name, bool pictures, const std::string& options) {
    const Folder folder;
    run("ffmpeg -nostdin -v error -f lavfi -i sine=frequency=220:sample_rate=44100:duration=0.6 " +
        std::string(pictures ? "-f lavfi -i testsrc=size=64x48:rate=25:duration=0.6 " : "") + options +
        " -fflags +bitexact -y " + quoted(folder / name));
    return {name, read_all(folder / name)};
}

std::vector<Made> one_of_each() {
    return {made("a.mp4", true, "-c:v mpeg4 -c:a aac"),
            made("a.mov", true, "-c:v mjpeg -c:a pcm_s16le"),
            made("a.m4a", false, "-c:a alac -movflags faststart"),
            made("a.mkv", true, "-c:v libx264 -c:a aac"),
            made("a.webm", true, "-c:v libvpx -c:a libopus"),
            made("a.avi", true, "-c:v mpeg4 -c:a mp2"),
            made("a.ts", true, "-c:v mpeg2video -c:a mp2"),
            made("a.mpg", true, "-c:v mpeg1video -c:a mp2"),
            made("a.flv", true, "-c:v flv -c:a adpcm_swf -ar 44100"),
            made("a.wmv", true, "-c:v wmv2 -c:a wmav2"),
            made("a.nut", true, "-c:v mpeg4 -c:a pcm_s16le"),
            made("a.wav", false),
            made("a.aiff", false),
            made("a.caf", false),
            made("a.au", false),
            made("a.w64", false),
            made("a.flac", false),
            made("a.mp3", false),
            made("a.aac", false),
            made("a.ogg", false, "-c:a libvorbis"),
            made("a.opus", false),
            made("a.ac3", false),
            made("a.wv", false),
            made("a.tta", false),
            made("a.rm", false, "-c:a ac3"),
            made("a.voc", false),
            made("a.3gp", true, "-c:v h263 -s 176x144 -c:a aac")};
}

} // namespace luft::test
