#include "cli/write_format.h"

#include "cli/typed.h"
#include "files/write_all.h"

namespace luft::cli {

const Format& format_of(const std::string& key) {
    std::string all;
    for (const Format& format : formats()) {
        if (format.key == key) return format;
        all += (all.empty() ? "" : ", ") + std::string(format.key);
    }
    throw UsageError("'" + key + "' is not a format; these are: " + all);
}

std::vector<std::filesystem::path> write_format(const Format& format, Material& material,
                                                const std::string& out, Frame& frame,
                                                const Progress& progress) {
    if (!out.empty()) {
        auto written = files::write(format, material, out, progress);
        for (const std::string& sentence : material.take_notes())
            frame.note(sentence);
        return written;
    }
    const auto* text = std::get_if<files::AsText>(&format.make);
    if (!text) throw UsageError("'" + std::string(format.key) + "' can't be printed; say where: --out");
    frame.print((*text)(material));
    return {};
}

} // namespace luft::cli
