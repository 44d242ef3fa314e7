// A measure over time: one value every 10 ms, or none where there is none to be had.
#pragma once

#include "base/units.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <span>
#include <vector>

namespace luft {

/// A share or probability, 0 to 1.
using Share = Quantity<struct ShareTag>;

/// One value of unit `U` every 10 ms from media time 0. Kept as single precision, since an hour has 360,000
/// values a curve; a missing value is kept as NaN and handed out as an empty optional, never as 0.
template <class U>
class Curve {
  public:
    Curve() = default;
    explicit Curve(std::size_t frames) : values_(frames, kNone) {}
    explicit Curve(std::vector<float> values) : values_(std::move(values)) {}

    [[nodiscard]] std::size_t size() const { return values_.size(); }
    [[nodiscard]] bool empty() const { return values_.empty(); }

    /// The value at a frame; none outside the curve and where the measure was withheld.
    [[nodiscard]] std::optional<U> at(FrameIndex i) const {
        if (i.value < 0 || i.value >= static_cast<std::int64_t>(values_.size())) return std::nullopt;
        const float v = values_[static_cast<std::size_t>(i.value)];
        if (std::isnan(v)) return std::nullopt;
        return U(static_cast<double>(v));
    }
    [[nodiscard]] std::optional<U> at(Seconds t) const { return at(nearest_frame(t)); }

    void set(std::size_t i, std::optional<U> v) { values_[i] = v ? static_cast<float>(v->value()) : kNone; }
    void push(std::optional<U> v) { values_.push_back(v ? static_cast<float>(v->value()) : kNone); }

    /// The stored numbers, NaN for none: for arithmetic over many frames and for storage.
    [[nodiscard]] std::span<const float> raw() const { return values_; }
    [[nodiscard]] std::span<float> raw() { return values_; }

    /// The stored numbers whose frames are centred inside a span of time.
    [[nodiscard]] std::span<const float> within(Span s) const {
        const auto n = static_cast<std::int64_t>(values_.size());
        const auto a = std::clamp<std::int64_t>(std::llround(std::ceil(s.start / kHop - 1e-6)), 0, n);
        const auto b = std::clamp<std::int64_t>(std::llround(std::ceil(s.end / kHop - 1e-6)), a, n);
        return std::span(values_).subspan(static_cast<std::size_t>(a), static_cast<std::size_t>(b - a));
    }

    static constexpr float kNone = std::numeric_limits<float>::quiet_NaN();

  private:
    std::vector<float> values_;
};

} // namespace luft
