#include "export/captions.h"

#include "base/text.h"

#include <algorithm>

namespace luft::exports {
namespace {

/// A text and the stretch of programme in which it is spoken.
struct Spoken {
    Rational start, end;
    const std::string* text = nullptr;
};

/// Words of a caption; lines of sign without a letter or digit count as one, so that each takes some time.
std::int64_t weight(const std::vector<std::string>& lines) {
    std::int64_t words = 0;
    for (const auto& line : lines)
        words += count_words(line);
    return std::max<std::int64_t>(words, 1);
}

std::vector<Spoken> all_spoken(const script::CueSheet& sheet) {
    std::vector<Spoken> out;
    for (const auto& s : sheet.segments)
        if (s.kind == script::SegmentKind::talk) out.push_back({s.programme_start, s.programme_end, &s.text});
    for (const auto& a : sheet.asides)
        out.push_back({a.programme_start, a.programme_end, &a.text});
    std::ranges::stable_sort(out, {}, &Spoken::start);
    return out;
}

} // namespace

std::vector<Caption> captions(const script::CueSheet& sheet) {
    std::vector<Caption> out;
    const auto spoken = all_spoken(sheet);
    for (std::size_t i = 0; i < spoken.size(); ++i) {
        const Spoken& s = spoken[i];
        const auto parts = caption_lines(*s.text);
        std::int64_t all = 0;
        for (const auto& lines : parts)
            all += weight(lines);
        if (all == 0) continue;
        const Rational room_end = i + 1 < spoken.size() ? spoken[i + 1].start : sheet.running_time;
        const Rational wanted = s.start + Rational(60 * all, kCaptionWordsPerMinute);
        const Rational end = std::max(s.end, std::min(wanted, room_end));
        std::int64_t before = 0;
        for (const auto& lines : parts) {
            Caption c;
            c.start = s.start + (end - s.start) * Rational(before, all);
            before += weight(lines);
            c.end = s.start + (end - s.start) * Rational(before, all);
            c.lines = lines;
            out.push_back(std::move(c));
        }
    }
    return out;
}

std::vector<WholeCaption> whole_captions(const script::CueSheet& sheet) {
    std::vector<WholeCaption> out;
    std::int64_t last = 0;
    for (Caption& c : captions(sheet)) {
        const std::int64_t start = std::max((c.start * Rational(1000)).round(), last);
        last = std::max((c.end * Rational(1000)).round(), start + 1); // must come after
        out.push_back({start, last, std::move(c.lines)});
    }
    return out;
}

} // namespace luft::exports
