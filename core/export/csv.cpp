#include "export/csv.h"

#include "base/shown_text.h"

#include <algorithm>
#include <array>

namespace luft::exports {
namespace {

bool starts_formula(std::string_view text) {
    constexpr std::array<std::string_view, 8> kSigns = {"=", "+", "-", "@", "＝", "＋", "－", "＠"};
    return std::ranges::any_of(kSigns, [&](std::string_view sign) { return text.starts_with(sign); });
}

bool parts_cells(char c) {
    return std::string_view(";\t\r\n").find(c) != std::string_view::npos;
}

} // namespace

std::string csv_field(std::string_view text) {
    std::string clean = without_orders(text);
    if (clean.find_first_of(",\"\r\n") == std::string::npos) return clean;
    std::string field = "\"";
    for (const char c : clean) {
        if (c == '"') field += '"';
        field += c;
    }
    return field + "\"";
}

std::string csv_words(std::string_view text) {
    // Control characters go from a field, so that what comes behind them may be its first.
    const std::string clean = without_orders(text);
    std::string words;
    bool begins = true; // a cell, here or where cells are parted otherwise
    for (std::string_view rest = clean; !rest.empty(); rest.remove_prefix(1)) {
        if (begins) {
            std::string_view behind = rest;
            while (behind.starts_with('\''))
                behind.remove_prefix(1);
            const bool white = !behind.empty() && behind.front() != ';' && parts_cells(behind.front());
            if (starts_formula(behind) || (white && words.empty())) words += '\'';
        }
        words += rest.front();
        begins = parts_cells(rest.front());
    }
    return words;
}

std::string csv_record(const std::vector<std::string>& fields) {
    std::string record;
    for (std::size_t i = 0; i < fields.size(); ++i)
        record += (i > 0 ? "," : "") + csv_field(fields[i]);
    return record + "\r\n";
}

} // namespace luft::exports
