#include "project/model.h"

namespace luft::project {

Span Mark::span() const {
    return std::visit(
        [](const auto& m) {
            if constexpr (requires { m.span; })
                return m.span;
            else
                return Span{m.time, m.time};
        },
        what);
}

Confidence Mark::confidence() const {
    return std::visit([](const auto& m) { return m.confidence; }, what);
}

const std::string& Mark::evidence() const {
    return std::visit([](const auto& m) -> const std::string& { return m.evidence; }, what);
}

} // namespace luft::project
