// A person's text on its way to a screen, a page or a terminal: whatever it holds, it shows as itself and
// does nothing else. UTF-8.
#pragma once

#include <string>
#include <string_view>

namespace luft {

/// The text without control characters other than tab and line ends, which a terminal may take for orders
/// (ECMA-48): C0, DEL, and U+0080 to U+009F. Malformed UTF-8 becomes U+FFFD.
std::string without_orders(std::string_view text);

/// The text for people: malformed UTF-8, and what is no character (Unicode 15, 23.7), become U+FFFD; control
/// characters go as in without_orders; U+0085, U+2028 and U+2029 become line ends; and every line closes what
/// it opens (see with_directions_closed).
std::string shown(std::string_view text);

/// The line with a sign at its end for each embedding, override and isolate that it leaves open (Unicode
/// Standard Annex #9, 2.1 to 2.5), so that nothing that is put behind it is turned round. Closing signs too
/// many go.
std::string with_directions_closed(std::string_view line);

/// Without any sign that turns the direction.
std::string without_directions(std::string_view text);

/// JSON that was written with every character as it is: DEL, U+0080 to U+009F, U+2028 and U+2029 as \uXXXX,
/// which is the same JSON (RFC 8259, 7) and gives a terminal no orders.
std::string shown_json(std::string json);

} // namespace luft
