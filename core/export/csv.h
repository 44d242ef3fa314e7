// Comma-separated values by RFC 4180.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace luft::exports {

/// One record: fields joined by commas and ended with CR LF (rule 1). A field that holds a comma, a quote or
/// a line end is quoted, and its quotes are doubled (rules 6 and 7). The
/// text goes through without_orders (base/shown_text.h).
std::string csv_record(const std::vector<std::string>& fields);

/// One field as it stands in a record.
std::string csv_field(std::string_view text);

/// A person's text made harmless for spreadsheets: they run a cell that begins with = + - @, a tab or a line
/// end as a formula (CWE-1236; OWASP, "CSV Injection"; its ASVS 5.0, 1.2.10, has the apostrophe), and some
/// take the wide forms of these signs (U+FF1D and so on) for the same. Such a text gets an apostrophe in
/// front, and so does one that begins with apostrophes and then so. The same goes for such a sign behind a
/// semicolon, a tab or a line end, since where the comma is the decimal sign, tables are parted there.
/// Whoever takes one apostrophe away at each such place where such a sign follows has the text again. For
/// words, not for numbers.
std::string csv_words(std::string_view text);

} // namespace luft::exports
