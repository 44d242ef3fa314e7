#include "export/stills.h"

#include "export/edit.h"
#include "export/numbered_files.h"

namespace luft::exports {
namespace {

constexpr std::string_view kKind = "stop";

Seconds middle_of(std::int64_t frame, Rational rate) {
    return Seconds(((Rational(frame) + Rational(1, 2)) / rate).as_double());
}

} // namespace

std::vector<std::filesystem::path> stills(const script::Source& source, const script::CueSheet& sheet,
                                          const OpenRecording& open, const std::filesystem::path& folder,
                                          media::StillKind kind, const Progress& progress) {
    const Edit edit(source, sheet);
    std::vector<const script::Segment*> stops;
    for (const auto& s : sheet.segments)
        if (s.kind == script::SegmentKind::talk && s.stop_number > 0) stops.push_back(&s);
    const std::string_view ending = kind == media::StillKind::png ? ".png" : ".jpg";
    if (!source.performance.facts.has_video || stops.empty()) {
        if (std::filesystem::is_directory(folder)) remove_numbered_after(folder, kKind, 0, ending);
        return {};
    }
    const auto pictures = media::open_pictures(open());
    make_folder(folder);
    std::vector<std::filesystem::path> files;
    for (const auto* stop : stops) {
        progress.step(static_cast<double>(files.size()) / static_cast<double>(stops.size()), "stills");
        const auto picture = pictures->at(middle_of(edit.cut(*stop).source_in, sheet.frame_rate));
        const auto number = static_cast<std::size_t>(stop->stop_number);
        files.push_back(folder / numbered(kKind, number, ending));
        media::write_still(picture, files.back(), kind);
    }
    remove_numbered_after(folder, kKind, static_cast<std::size_t>(stops.back()->stop_number), ending);
    return files;
}

} // namespace luft::exports
