#include "profile/measure.h"

#include "base/text.h"
#include "profile/statistics.h"

#include <cmath>

namespace luft::profile {
namespace {

template <class Keep>
std::vector<double> kept(const std::vector<Values::One>& all, Keep keep) {
    std::vector<double> out;
    for (const auto& one : all)
        if (keep(one)) out.push_back(one.value);
    return out;
}

std::optional<double> median_of_enough(std::vector<double> values) {
    return values.size() < kLeastForMedian ? std::nullopt : median(std::move(values));
}

} // namespace

void Values::add(double value, int third, int quarter) {
    if (std::isfinite(value)) all_.push_back({value, third, quarter});
}

std::vector<double> Values::numbers() const {
    return kept(all_, [](const One&) { return true; });
}
std::vector<double> Values::in_third(int third) const {
    return kept(all_, [&](const One& one) { return one.third == third; });
}
std::vector<double> Values::in_quarter(int quarter) const {
    return kept(all_, [&](const One& one) { return one.quarter == quarter; });
}

void add_measure(std::vector<Measure>& to, const std::string& key, const std::string& name,
                 const std::string& unit, int digits, const Values& values, const std::string& note) {
    if (values.empty()) return;
    Measure m;
    m.key = key;
    m.name = name;
    m.unit = unit;
    m.digits = digits;
    const auto numbers = values.numbers();
    m.median = median(numbers).value_or(0);
    m.low = percentile(numbers, 0.1).value_or(0);
    m.high = percentile(numbers, 0.9).value_or(0);
    m.count = static_cast<int>(values.size());
    for (int t = 0; t < 3; ++t)
        m.by_range[static_cast<std::size_t>(t)] = median_of_enough(values.in_third(t));
    for (int q = 0; q < 4; ++q)
        m.by_quarter[static_cast<std::size_t>(q)] = median_of_enough(values.in_quarter(q));
    m.note = note;
    to.push_back(std::move(m));
}

std::string spread_text(const Values& values, const std::string& unit, int digits) {
    const auto numbers = values.numbers();
    const auto middle = median(numbers);
    if (!middle) return {};
    const std::string u = unit.empty() ? "" : " " + unit;
    if (numbers.size() < kLeastForMedian) return fixed(*middle, digits) + u;
    return fixed(*middle, digits) + u + " (" + fixed(percentile(numbers, 0.1).value_or(0), digits) + " to " +
           fixed(percentile(numbers, 0.9).value_or(0), digits) + u + ")";
}

} // namespace luft::profile
