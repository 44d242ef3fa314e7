// Times as a person types them.
#pragma once

#include "base/units.h"

#include <optional>
#include <string_view>

namespace luft {

/// Reads "12.5", "1:02.5" or "1:01:02.5": what clock_text writes, and seconds alone. None for anything else.
std::optional<Seconds> typed_time(std::string_view text);

/// Reads "0:41-0:44.5": two such times. None for anything else; the end may come before the start.
std::optional<Span> typed_span(std::string_view text);

} // namespace luft
