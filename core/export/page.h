// The frame that all our HTML pages share: head, style sheet for screen and paper, title, cautions at the
// foot.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace luft::exports {

/// What one page says. All but `body_html` and `extra_css` are plain text and are escaped here.
struct PageText {
    std::string title;                 ///< the heading, and with `kind` the window's title
    std::string kind;                  ///< what the page is, above the heading: "Technique profile"
    std::string subtitle;              ///< one line under the heading; may be empty
    std::vector<std::string> facts;    ///< short pieces of one line under that: performer, source, length …
    std::string body_html;             ///< markup, made with `safe` and the like
    std::string extra_css;             ///< rules of this page alone; no '<' or '&' in them
    std::vector<std::string> cautions; ///< sentences at the foot; see `cautions()`
};

/// A whole page that needs nothing from elsewhere: no script, no other file, no network. Well-formed both as
/// HTML and as XML. Prints on A4; light or dark on a screen as the reader has chosen.
///
/// Classes for the body: `lead` (opening sentences), `cards` (side by side where there is room), `card`,
/// `quiet` (small grey words), `time` (a media or programme time), `key` (row of legend entries), `keep` (not
/// to be torn apart between two pages), `wide` (may use more width on a screen), tables as they are.
/// Colours for text and inline SVG: the custom properties --ink, --soft, --faint, --rule, --paper, --card and
/// the colour-blind-safe set --blue, --orange, --green, --sky, --yellow, --red, --purple (Okabe & Ito 2008,
/// "Color Universal Design"). Colour is never the only sign: add a texture, a shape or a word.
std::string page(const PageText& text);

/// What every page of ours says at its foot: estimates and no diagnosis, hoarseness and the doctor, quoting.
std::vector<std::string> cautions();

/// Text fit for markup: malformed UTF-8 replaced, then escaped.
std::string safe(std::string_view text);

/// The same in which a number doesn't part from its unit at a line's end.
std::string prose(std::string_view text);

/// `<tag class="name">` around escaped text; without a class when `name` is empty.
std::string element(std::string_view tag, std::string_view name, std::string_view text);

} // namespace luft::exports
