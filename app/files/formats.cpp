#include "files/formats.h"

#include "base/shown_text.h"
#include "export/analysis_json.h"
#include "export/chapters.h"
#include "export/cue_csv.h"
#include "export/cue_html.h"
#include "export/cue_json.h"
#include "export/cue_pdf.h"
#include "export/description.h"
#include "export/edl.h"
#include "export/handout.h"
#include "export/handout_pdf.h"
#include "export/marks_csv.h"
#include "export/marks_json.h"
#include "export/otio.h"
#include "export/profile_html.h"
#include "export/profile_json.h"
#include "export/profile_text.h"
#include "export/sheet_pictures.h"
#include "export/stills.h"
#include "export/subrip.h"
#include "export/teleprompter.h"
#include "export/webvtt.h"
#include "files/cue_table.h"
#include "files/guide_file.h"
#include "files/sources.h"
#include "profile/gather.h"
#include "script/gather.h"
#include "sheet/pages.h"

#include <array>

namespace luft::files {
namespace {

std::vector<project::Mark> marks_of(Material& m) {
    return m.project().marks(m.performance().id);
}

template <media::StillKind kind>
constexpr AsFolder kStills{[](Material& m, const std::filesystem::path& folder, const Progress& progress) {
                               return exports::stills(
                                   m.script_source(), m.cue_sheet(),
                                   [&] { return m.project().media(m.performance(), false, {}, progress); },
                                   folder, kind, progress);
                           },
                           "No stills: the recording has no moving picture, or the script has no stop."};

constexpr std::array kFormats = {
    Format{"profile-html", "profile.html", "technique profile with pictures, to read or print",
           [](Material& m) { return exports::profile_html(m.profile(), m.profile_source()); }},
    Format{"profile-text", "profile.txt", "technique profile as plain text",
           [](Material& m) { return exports::profile_text(m.profile()); }},
    Format{"profile-json", "profile.json", "technique profile for other programs",
           [](Material& m) { return exports::profile_json(m.profile()); }},
    Format{"cues-html", "cues.html", "cue sheet to print",
           [](Material& m) { return exports::cue_html(m.script_source(), m.cue_sheet()); }},
    Format{"cues-pdf", "cues.pdf", "the same cue sheet as pages of a PDF",
           AsFile{[](Material& m, const std::filesystem::path& file, const Progress& progress) {
               exports::cue_pdf(m.script_source(), m.cue_sheet(), file, progress);
           }}},
    Format{"cues-csv", "cues.csv", "cue sheet as a table",
           [](Material& m) { return exports::cue_csv(m.script_source(), m.cue_sheet()); }},
    Format{"cues-json", "cues.json", "cue sheet for other programs",
           [](Material& m) { return exports::cue_json(m.script_source(), m.cue_sheet()); }},
    Format{"cues-text", "cues.txt", "cue sheet as plain text",
           [](Material& m) { return cue_table(m.script_source(), m.cue_sheet()); }},
    Format{"captions", "captions.vtt", "captions of the finished programme, WebVTT",
           [](Material& m) { return exports::webvtt(m.cue_sheet()); }},
    Format{"captions-srt", "captions.srt", "the same captions as SubRip",
           [](Material& m) { return exports::subrip(m.cue_sheet()); }},
    Format{"chapters", "chapters.txt", "chapters of the finished programme, as text",
           [](Material& m) {
               return exports::chapters_text(exports::chapters(m.script_source(), m.cue_sheet()));
           }},
    Format{"edl", "edit.edl", "edit decision list of the programme, CMX 3600 layout",
           [](Material& m) { return exports::edl(m.script_source(), m.cue_sheet()); }},
    Format{"otio", "edit.otio", "edit of the programme as an OpenTimelineIO timeline",
           [](Material& m) { return exports::otio(m.script_source(), m.cue_sheet()); }},
    Format{"teleprompter", "teleprompter.html", "the words to speak, large, to read while recording",
           [](Material& m) { return exports::teleprompter(m.script_source(), m.cue_sheet()); }},
    Format{"description", "description.txt", "text to publish with it: chapters, credits, cautions",
           [](Material& m) { return exports::description(m.script_source(), m.cue_sheet()); }},
    Format{"handout", "handout.html", "drills for students, with where to hear what they are for",
           [](Material& m) { return exports::handout(m.profile(), m.profile_source()); }},
    Format{"handout-pdf", "handout.pdf", "the same drills as pages of a PDF",
           AsFile{[](Material& m, const std::filesystem::path& file, const Progress& progress) {
               exports::handout_pdf(m.profile(), m.profile_source(), file, progress);
           }}},
    Format{"sheet-pdf", "sheet.pdf", "the marked-up song sheet to print",
           AsFile{[](Material& m, const std::filesystem::path& file, const Progress& progress) {
               sheet::write_pdf(m.profile_source(), file, progress);
           }}},
    Format{"sheet-pictures", "sheet", "a folder with each sung line of the sheet as a picture (PNG, SVG)",
           AsFolder{[](Material& m, const std::filesystem::path& folder, const Progress& progress) {
               return exports::sheet_pictures(m.profile_source(), folder, progress);
           }}},
    Format{"stills", "stills", "a folder with the picture that stands at each stop (PNG)",
           kStills<media::StillKind::png>},
    Format{"stills-jpeg", "stills-jpeg", "the same pictures as JPEG", kStills<media::StillKind::jpeg>},
    Format{"marks-csv", "marks.csv", "breaths, phrases, switches and notes as a table",
           [](Material& m) { return exports::marks_csv(m.performance(), marks_of(m)); }},
    Format{"marks-json", "marks.json", "breaths, phrases, switches and notes for other programs",
           [](Material& m) {
               return exports::marks_json(m.performance(), marks_of(m),
                                          m.project().sung_words(m.performance().id));
           }},
    Format{"analysis", "analysis.json", "the whole analysis with its curves",
           [](Material& m) {
               return exports::analysis_json(stored_analysis(m.project(), m.performance()),
                                             m.performance().facts);
           }},
    // Last: it takes longest.
    Format{"guide", "guide.mp4", "guide movie: the recording with its halts, slate and programme time",
           AsFile{[](Material& m, const std::filesystem::path& file, const Progress& progress) {
               write_guide_file(m, file, {.slate = true, .timecode = true, .width = 0, .height = 0}, true,
                                progress);
           }}},
};

/// Keeps what it is given; makes it when there is none yet.
template <class Value, class Make>
const Value& once(std::optional<Value>& kept, Make make) {
    if (!kept) kept = make();
    return *kept;
}

} // namespace

const profile::Source& Material::profile_source() {
    return once(profile_source_, [&] { return profile::gather(project_, performance_); });
}

const profile::Profile& Material::profile() {
    return once(profile_, [&] { return profile::make_profile(profile_source()); });
}

const script::Source& Material::script_source() {
    return once(script_source_, [&] { return script::gather(project_, performance_); });
}

const script::CueSheet& Material::cue_sheet() {
    return once(cue_sheet_, [&] { return script::lay_out(script_source()); });
}

std::span<const Format> formats() {
    return kFormats;
}

std::string file_stem(std::string_view label) {
    constexpr std::size_t kMost =
        80; // bytes: two of them and an ending stay below the 255 of most file systems
    std::string stem;
    for (const char c : without_directions(shown(label))) {
        const auto u = static_cast<unsigned char>(c);
        const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                           c == '-' || c == '_' || u >= 0x80;
        stem += plain ? c : '-';
    }
    if (stem.size() > kMost) { // at the start of a character
        std::size_t end = kMost;
        while ((static_cast<unsigned char>(stem[end]) & 0xC0) == 0x80)
            --end;
        stem.resize(end);
    }
    return stem.empty() ? "performance" : stem;
}

} // namespace luft::files
