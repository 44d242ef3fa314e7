#include "bench/place.h"

#include "base/error.h"
#include "media/media.h"

#include <stdlib.h>

#include <array>
#include <cstdio>
#include <system_error>

namespace luft::bench {

Place::Place() {
    std::string pattern = (std::filesystem::temp_directory_path() / "luft-bench-XXXXXX").string();
    if (!::mkdtemp(pattern.data())) throw Error(Fault::cannot_write, "No temporary folder could be made.");
    path_ = pattern;
}

Place::~Place() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

void run(const std::string& command) {
    FILE* pipe = ::popen(("exec 2>&1; " + command).c_str(), "r");
    if (!pipe) throw Error(Fault::not_found, "No shell could be started.");
    std::string said;
    std::array<char, 4096> part{};
    while (const std::size_t n = std::fread(part.data(), 1, part.size(), pipe))
        said.append(part.data(), n);
    if (::pclose(pipe) != 0) throw Error(Fault::not_found, "This failed: " + command + "\n" + said);
}

Sound read_sound(const std::filesystem::path& file) {
    const auto source = media::open_sound(open_file(file));
    Sound out{{}, static_cast<int>(source->format().channels.size()), source->format().rate};
    while (const auto block = source->read())
        out.samples.insert(out.samples.end(), block->samples.begin(), block->samples.end());
    return out;
}

} // namespace luft::bench
