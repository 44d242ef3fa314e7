// What the coach has taken hold of.
#pragma once

#include "project/model.h"

#include <variant>

namespace luft::desk {

/// Nothing, a mark or a moment of the performance that is shown.
using Selection = std::variant<std::monostate, project::MarkId, project::MomentId>;

inline std::optional<project::MarkId> mark_of(const Selection& s) {
    const auto* id = std::get_if<project::MarkId>(&s);
    return id ? std::optional(*id) : std::nullopt;
}
inline std::optional<project::MomentId> moment_of(const Selection& s) {
    const auto* id = std::get_if<project::MomentId>(&s);
    return id ? std::optional(*id) : std::nullopt;
}

} // namespace luft::desk
