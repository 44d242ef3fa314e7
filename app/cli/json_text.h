// JSON as the verbs print it.
#pragma once

#include "base/shown_text.h"

#include <nlohmann/json.hpp>

#include <string>

namespace luft::cli {

using Json = nlohmann::ordered_json;

/// Indented, with a line end; malformed UTF-8 (from a damaged project, say) is replaced.
inline std::string json_text(const Json& value) {
    return shown_json(value.dump(2, ' ', false, Json::error_handler_t::replace)) + "\n";
}

} // namespace luft::cli
