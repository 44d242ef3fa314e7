#include "export/edit.h"

#include "script/grid.h"
#include "script/others.h"
#include "script/title.h"

#include <algorithm>

namespace luft::exports {
namespace {

constexpr std::size_t kAsideTitle = 44; ///< characters; as many as a stop's title has

} // namespace

Edit::Edit(const script::Source& source, const script::CueSheet& sheet)
    : source_(&source), rate_(sheet.frame_rate), has_picture_(source.performance.facts.has_video),
      media_frames_(std::max<std::int64_t>(
          script::Grid(sheet.frame_rate).frames_in(source.performance.facts.duration), 1)) {
    for (const auto& s : sheet.segments) {
        has_picture_ = has_picture_ || has_picture(s);
        if (s.kind == script::SegmentKind::talk && s.stop_number > 0)
            places_.push_back({frame(s.programme_start), frame(s.programme_end), false, s.title, s.text});
    }
    for (const auto& a : sheet.asides)
        places_.push_back({frame(a.programme_start), frame(a.programme_end), true,
                           "Aside: " + script::one_line(a.text, kAsideTitle), a.text});
    std::ranges::stable_sort(places_, {}, &Place::from);
}

bool Edit::has_picture(const script::Segment& segment) const {
    return script::performance_of(*source_, segment).facts.has_video;
}

Cut Edit::cut(const script::Segment& s) const {
    Cut cut{&s, frame(s.programme_start), frame(s.programme_end), frame(s.media_start), frame(s.media_end)};
    if (s.kind == script::SegmentKind::talk) {
        cut.source_in = std::min(cut.source_in, media_frames_ - 1);
        cut.source_out = cut.source_in + 1;
    }
    return cut;
}

std::string clip_name(const project::Performance& performance) {
    const std::string& path = performance.media.path;
    const std::string name = path.substr(path.rfind('/') + 1); // npos + 1 is 0
    return name.empty() ? performance.label : name;
}

std::string one_text_line(const std::string& text, std::size_t most) {
    return script::one_line(text, most);
}

} // namespace luft::exports
