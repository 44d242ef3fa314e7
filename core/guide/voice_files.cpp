#include "guide/voice_files.h"

#include "base/error.h"
#include "base/text.h"
#include "media/media.h"
#include "script/voices.h"

#include <cmath>
#include <optional>

namespace luft::guide {
namespace {

/// What the item is called in the programme; empty when it isn't in it.
std::string title_in(const script::CueSheet& sheet, project::ScriptItemId item) {
    for (const script::Segment& s : sheet.segments)
        if (s.kind == script::SegmentKind::talk && s.item == item) return s.title;
    for (const script::AsideCue& a : sheet.asides)
        if (a.item == item) return "the aside at " + clock_text(a.media_start);
    return {};
}

/// Why the file isn't used; empty when it is.
std::string objection(const std::filesystem::path& file, const project::ScriptItem& item,
                      const std::string& title) {
    if (title.empty()) return "what it belongs to isn't in the programme";
    if (!item.rehearsed) return "the words of " + title + " have been changed since, or were never rehearsed";
    try {
        const Seconds length = media::probe(open_file(file)).duration;
        if (std::abs((length - *item.rehearsed).value()) > kVoiceRounding.value())
            return "it lasts " + fixed(length.value(), 2) + " s, but " + title + " was rehearsed at " +
                   fixed(item.rehearsed->value(), 2) + " s";
    } catch (const Error& fault) {
        return fault.what();
    }
    return {};
}

/// How much of a rehearsed aside there is room for; none when for all of it.
std::optional<Seconds> cut_off_after(const script::CueSheet& sheet, const project::ScriptItem& item) {
    for (const script::AsideCue& a : sheet.asides) {
        const Seconds room((a.programme_end - a.programme_start).as_double());
        if (a.item == item.id && *item.rehearsed - room > kVoiceRounding) return room;
    }
    return std::nullopt;
}

} // namespace

VoiceFiles find_voices(const std::filesystem::path& folder, const script::Source& source,
                       const script::CueSheet& sheet) {
    VoiceFiles files;
    if (folder.empty()) return files;
    for (const project::ScriptItem& item : source.items) {
        const std::filesystem::path file = script::voice_file(folder, item.id);
        std::error_code ignored;
        if (!std::filesystem::exists(file, ignored)) continue;
        const std::string why = objection(file, item, title_in(sheet, item.id));
        if (why.empty()) {
            files.used[item.id] = {file, *item.rehearsed};
            if (const auto room = cut_off_after(sheet, item))
                files.not_used.push_back(sentence(file, "is cut off after " + fixed(room->value(), 2) +
                                                            " s, where the next halt or aside begins"));
        } else {
            files.not_used.push_back(not_used(file, why));
        }
    }
    return files;
}

std::string sentence(const std::filesystem::path& file, const std::string& said) {
    return "'" + file.filename().string() + "' " + said + (said.ends_with('.') ? "" : ".");
}

std::string not_used(const std::filesystem::path& file, const std::string& why) {
    return sentence(file, "isn't used: " + why);
}

} // namespace luft::guide
