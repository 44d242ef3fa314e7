#include "export/chapters.h"

#include "export/edit.h"
#include "script/title.h"

#include <array>
#include <cstdio>

namespace luft::exports {
namespace {

std::string clock(std::int64_t s) {
    std::array<char, 64> buffer{};
    const auto part = [](std::int64_t n) { return static_cast<long long>(n); };
    if (s >= 3600)
        std::snprintf(buffer.data(), buffer.size(), "%lld:%02lld:%02lld", part(s / 3600), part(s / 60 % 60),
                      part(s % 60));
    else
        std::snprintf(buffer.data(), buffer.size(), "%lld:%02lld", part(s / 60), part(s % 60));
    return buffer.data();
}

} // namespace

std::vector<Chapter> chapters(const script::Source& source, const script::CueSheet& sheet) {
    std::vector<Chapter> out;
    const std::string piece = script::one_line(source.piece.title);
    bool music = false;
    for (const auto& s : sheet.segments) {
        if (s.kind == script::SegmentKind::quote) continue; // belongs to its stop
        Chapter c{s.programme_start, script::one_line(s.title)};
        const bool plays = s.kind != script::SegmentKind::talk;
        if (plays) {
            if (music) continue;
            music = true;
            c.title = piece.empty() ? "The recording" : piece;
        }
        const bool near = !out.empty() && c.start - out.back().start < kLeastChapter;
        if (!near)
            out.push_back(std::move(c));
        else if (!plays)
            out.back().title += "; " + c.title;
    }
    return out;
}

std::string chapters_text(const std::vector<Chapter>& chapters) {
    std::string out;
    for (const Chapter& c : chapters)
        out += clock(c.start.floor()) + " " + one_text_line(c.title, 1000) + "\n";
    return out;
}

} // namespace luft::exports
