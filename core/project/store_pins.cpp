// Pins: places of two performances that the coach has tied together.
#include "project/store.h"

#include <cmath>

namespace luft::project {
namespace {

bool is_time(Seconds t) {
    return std::isfinite(t.value()) && t.value() >= 0;
}

void demand_pins(const std::vector<Pin>& pins) {
    for (const Pin& pin : pins)
        demand(is_time(pin.a) && is_time(pin.b), "A pin lies before 0:00.", "Give times at or after 0:00.");
    for (std::size_t i = 1; i < pins.size(); ++i)
        demand(pins[i - 1].a < pins[i].a && pins[i - 1].b < pins[i].b, "Two pins cross.",
               "Remove one of them: what comes later in the one performance comes later in the other.");
}

/// As they are stored: of the performance with the smaller id first.
std::vector<Pin> turned(std::vector<Pin> pins, bool turn) {
    if (turn)
        for (Pin& pin : pins)
            std::swap(pin.a, pin.b);
    return pins;
}

} // namespace

std::vector<Pin> Project::pins(PerformanceId a, PerformanceId b) const {
    const bool turn = b < a;
    Statement rows = store_->database.query(
        "SELECT first_s, second_s FROM pin WHERE first = ? AND second = ? ORDER BY first_s",
        std::min(a, b).value, std::max(a, b).value);
    std::vector<Pin> pins;
    while (rows.step())
        pins.push_back({rows.unit<Seconds>(0), rows.unit<Seconds>(1)});
    return turned(std::move(pins), turn);
}

void Project::set_pins(PerformanceId a, PerformanceId b, const std::vector<Pin>& given) {
    demand(a != b, "A performance can't be pinned to itself.", "Name two performances.");
    std::vector<Pin> sorted = given;
    std::ranges::sort(sorted, {}, &Pin::a);
    demand_pins(sorted);
    Edit edit = store_->edit();
    Database& database = store_->database;
    const std::string label =
        "pins between '" + label_of(database, a) + "' and '" + label_of(database, b) + "'";
    const std::vector<Pin> old = turned(pins(a, b), b < a), now = turned(sorted, b < a);
    const std::int64_t first = std::min(a, b).value, second = std::max(a, b).value;
    for (const Pin& gone : old)
        if (!std::ranges::count(now, gone))
            database.run("DELETE FROM pin WHERE first = ? AND second = ? AND first_s = ?", first, second,
                         gone.a);
    for (const Pin& pin : now)
        if (!std::ranges::count(old, pin))
            database.run("INSERT INTO pin (first, second, first_s, second_s) VALUES (?, ?, ?, ?)", first,
                         second, pin.a, pin.b);
    edit.commit("set the " + label);
}

} // namespace luft::project
