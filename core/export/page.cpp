#include "export/page.h"

#include "base/shown_text.h"
#include "base/text.h"
#include "export/page_style.h"

#include <algorithm>

namespace luft::exports {
namespace {

constexpr std::string_view kUnits[] = {"%",  "Hz", "dB", "cents", "cent ", "s ", "s,",
                                       "s.", "s;", "s)", "ms",    "LU",    "cm", "min"};

} // namespace

std::string safe(std::string_view text) {
    return escape_markup(shown(text));
}

std::string prose(std::string_view text) {
    const std::string words = safe(text);
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool after_digit = i > 0 && words[i - 1] >= '0' && words[i - 1] <= '9';
        const std::string_view rest = std::string_view(words).substr(std::min(i + 1, words.size()));
        const bool unit =
            std::ranges::any_of(kUnits, [&](std::string_view u) { return rest.starts_with(u); });
        if (words[i] == ' ' && after_digit && unit)
            out += "\xC2\xA0"; // no-break space
        else
            out += words[i];
    }
    return out;
}

std::string element(std::string_view tag, std::string_view name, std::string_view text) {
    std::string out = "<" + std::string(tag);
    if (!name.empty()) out += " class=\"" + std::string(name) + "\"";
    return out + ">" + safe(text) + "</" + std::string(tag) + ">\n";
}

std::vector<std::string> cautions() {
    return {
        "Every figure on this page is an estimate from the sound of a recording. Microphone, room, "
        "accompaniment and later processing all leave their mark on it. What is called a hint is a hint; the "
        "ear and the eye of the teacher decide.",
        "Nothing here is a diagnosis or says anything about the health of a voice. Hoarseness that lasts "
        "more "
        "than three weeks belongs to a doctor, and so does pain or a voice that stays away (NIDCD fact sheet "
        "on hoarseness).",
        "Whether and how much of a recording may be quoted is the user's own responsibility under the law of "
        "the place; naming the source is not a permission.",
    };
}

std::string page(const PageText& text) {
    std::string out = "<!DOCTYPE html>\n"
                      "<html lang=\"en\" xmlns=\"http://www.w3.org/1999/xhtml\">\n<head>\n"
                      "<meta charset=\"utf-8\" />\n"
                      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\" />\n"
                      "<meta name=\"color-scheme\" content=\"light dark\" />\n";
    out += "<title>" + safe(text.kind.empty() ? text.title : text.kind + ": " + text.title) + "</title>\n";
    out += "<style>\n" + std::string(page_style()) + text.extra_css + "</style>\n</head>\n<body>\n<main>\n";

    out += "<header>\n";
    if (!text.kind.empty()) out += element("p", "kind", text.kind);
    out += element("h1", "", text.title);
    if (!text.subtitle.empty()) out += element("p", "subtitle", text.subtitle);
    if (!text.facts.empty()) {
        out += "<ul class=\"facts\">\n";
        for (const auto& fact : text.facts)
            out += element("li", "", fact);
        out += "</ul>\n";
    }
    out += "</header>\n" + text.body_html;

    if (!text.cautions.empty()) {
        out += "<footer>\n<h2>Please keep in mind</h2>\n";
        for (const auto& caution : text.cautions)
            out += element("p", "", caution);
        out += "</footer>\n";
    }
    return out + "</main>\n</body>\n</html>\n";
}

} // namespace luft::exports
