// Between our UTF-8 and the window library's strings.
#pragma once

#include <wx/string.h>

#include <string>
#include <string_view>

namespace luft::desk {

inline wxString shown(std::string_view text) {
    return wxString::FromUTF8(text.data(), text.size());
}
inline std::string typed(const wxString& text) {
    const auto bytes = text.utf8_str();
    return {bytes.data(), bytes.length()};
}

} // namespace luft::desk
