// Comma-separated values by RFC 4180.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace luft::exports {

/// One record: fields joined by commas and ended with CR LF (rule 1). A field that holds a comma, a quote or
/// a line end is quoted, and its quotes are doubled (rules 6 and 7). Malformed UTF-8 is replaced.
std::string csv_record(const std::vector<std::string>& fields);

/// One field as it stands in a record.
std::string csv_field(std::string_view text);

/// A person's text made harmless for spreadsheets: they run a cell that begins with = + - @, a tab or a line
/// end as a formula, so such a text gets an apostrophe in front. For words, not for numbers. (OWASP, "CSV
/// Injection".)
std::string csv_words(std::string_view text);

} // namespace luft::exports
