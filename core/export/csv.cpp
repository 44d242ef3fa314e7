#include "export/csv.h"

#include "base/text.h"

namespace luft::exports {

std::string csv_field(std::string_view text) {
    const std::string clean = valid_utf8(text);
    if (clean.find_first_of(",\"\r\n") == std::string::npos) return clean;
    std::string field = "\"";
    for (const char c : clean) {
        if (c == '"') field += '"';
        field += c;
    }
    return field + "\"";
}

std::string csv_words(std::string_view text) {
    const bool formula =
        !text.empty() && std::string_view("=+-@\t\r\n").find(text.front()) != std::string_view::npos;
    return (formula ? "'" : "") + std::string(text);
}

std::string csv_record(const std::vector<std::string>& fields) {
    std::string record;
    for (std::size_t i = 0; i < fields.size(); ++i)
        record += (i > 0 ? "," : "") + csv_field(fields[i]);
    return record + "\r\n";
}

} // namespace luft::exports
