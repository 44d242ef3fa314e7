// Between our UTF-8 and the window library's strings.
#pragma once

#include <wx/string.h>

#include <string>
#include <string_view>

namespace luft::desk {

/// As the window has it: a letter with thousands of marks, as a file may hold it, would keep it busy for
/// minutes.
wxString shown(std::string_view text);
inline std::string typed(const wxString& text) {
    const auto bytes = text.utf8_str();
    return {bytes.data(), bytes.length()};
}

} // namespace luft::desk
