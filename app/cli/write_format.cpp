#include "cli/write_format.h"

#include "cli/sources.h"
#include "cli/typed.h"

namespace luft::cli {

std::vector<std::filesystem::path> write_format(const Format& format, Material& material,
                                                const std::string& out, Frame& frame,
                                                const Progress& progress) {
    const auto sources = files_of(material.project());
    if (const auto* text = std::get_if<AsText>(&format.make)) {
        frame.deliver((*text)(material), out, sources);
        return {out};
    }
    if (out.empty()) throw UsageError("'" + std::string(format.key) + "' can't be printed; say where: --out");
    Frame::spare(out, sources);
    if (const auto* folder = std::get_if<AsFolder>(&format.make))
        return folder->write(material, out, progress);
    std::get<AsFile>(format.make).write(material, out, progress);
    return {out};
}

} // namespace luft::cli
