#include "export/description.h"

#include "export/chapters.h"
#include "export/edit.h"
#include "export/page.h"
#include "script/others.h"

namespace luft::exports {
namespace {

std::string line(const char* name, const std::string& text, const char* otherwise) {
    const std::string words = one_text_line(text, 1000);
    return std::string(name) + ": " + (words.empty() ? otherwise : words) + "\n";
}

} // namespace

std::string description(const script::Source& source, const script::CueSheet& sheet) {
    const auto& p = source.performance;
    const std::string title = one_text_line(source.piece.title);
    const std::string performer = one_text_line(p.performer);
    std::string out = (title.empty() ? "A recording" : title) +
                      (performer.empty() ? "" : ", sung by " + performer) + ": a voice teacher listens\n";
    if (const std::string list = chapters_text(chapters(source, sheet)); !list.empty())
        out += "\nChapters\n" + list;
    out += "\nCredits\n" + line("Piece", source.piece.title, "not noted") +
           line("Written by", source.piece.writer, "not noted") +
           line("Performed by", p.performer, "not noted") + line("Recording", p.source, "source not noted") +
           line("Permission", p.permission, "none noted. Settle this before the programme is published.");
    for (const auto& quoted : sheet.others) {
        const auto& other = script::other_of(source, quoted.performance)->performance;
        out += line("\nCompared with", other.performer, other.label.c_str()) +
               line("Recording", other.source, "source not noted") +
               line("Permission", other.permission,
                    "none noted. Settle this before the programme is published.");
    }
    out += "\nPlease keep in mind\n";
    for (const auto& caution : cautions())
        out += caution + "\n";
    return out;
}

} // namespace luft::exports
