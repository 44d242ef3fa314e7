// A measured number over a performance: median, spread, and how it changes with range and song.
#pragma once

#include "profile/material.h"

#include <string>
#include <vector>

namespace luft::profile {

/// Values with their places.
class Values {
  public:
    struct One {
        double value = 0;
        int third = 1;
        int quarter = 0;
    };
    void add(double value, int third, int quarter);
    void add(double value, const SungNote& note) { add(value, note.third, note.quarter); }
    void add(std::optional<double> value, const SungNote& note) {
        if (value) add(*value, note);
    }

    [[nodiscard]] std::size_t size() const { return all_.size(); }
    [[nodiscard]] bool empty() const { return all_.empty(); }
    [[nodiscard]] std::vector<double> numbers() const;
    [[nodiscard]] std::vector<double> in_third(int third) const;
    [[nodiscard]] std::vector<double> in_quarter(int quarter) const;

  private:
    std::vector<One> all_;
};

/// A median over fewer values than this says nothing about a third or a quarter (no source).
inline constexpr std::size_t kLeastForMedian = 3;

/// Sums values up under the names given, and appends the measure to `to`; does nothing without values.
void add_measure(std::vector<Measure>& to, const std::string& key, const std::string& name,
                 const std::string& unit, int digits, const Values& values, const std::string& note);

/// "0.35 s (0.21 to 0.52 s)": median with spread, for sentences. Empty without values.
std::string spread_text(const Values& values, const std::string& unit, int digits);

} // namespace luft::profile
