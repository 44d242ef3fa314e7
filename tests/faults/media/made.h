// Valid files, small and short, of every container that a recording may come in; made by the ffmpeg program.
#pragma once

#include <string>
#include <vector>

namespace luft::test {

struct Made {
    std::string name; ///< "a.mp4"
    std::string bytes;
};

/// One container, made with these options for ffmpeg: 0.6 s of a tone, and with `pictures` a test picture.
Made made(const std::string& name, bool pictures, const std::string& options = "");

/// One file of each container that this build of FFmpeg writes and a recording may come in.
std::vector<Made> one_of_each();

} // namespace luft::test
