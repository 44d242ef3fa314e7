// luftpause-make-installed FOLDER: writes what is installed beside the programs and comes from them, the
// manual pages and the icon. The same bytes each time.
#include "base/write_file.h"
#include "files/sign.h"
#include "install/manual.h"

#include <cstdio>
#include <exception>
#include <filesystem>

namespace {

void write_icons(const std::filesystem::path& folder) {
    constexpr double kSide = 128;
    auto outlines = luft::sheet::Canvas::svg(kSide, kSide);
    luft::files::draw_sign(outlines, kSide);
    luft::write_file(folder / "luftpause.svg", outlines.take_svg());
    for (const int side : {48, 128}) {
        auto pixels = luft::sheet::Canvas::picture(side, side);
        luft::files::draw_sign(pixels, side);
        pixels.write_png(folder / ("luftpause-" + std::to_string(side) + ".png"));
    }
}

} // namespace

int main(int argc, char** argv) {
    try {
        const std::filesystem::path folder = argc == 2 ? argv[1] : ".";
        std::filesystem::create_directories(folder);
        write_icons(folder);
        luft::write_file(folder / "luftpause.1", luft::install::manual());
    } catch (const std::exception& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return 1;
    }
}
