#include "export/beside_json.h"

#include "base/shown_text.h"
#include "export/page.h"
#include "profile/beside_words.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace luft::exports {
namespace {

using json = nlohmann::ordered_json;

json rounded(double v, int digits) {
    if (!std::isfinite(v)) return nullptr;
    const double scale = std::pow(10.0, digits);
    return std::round(v * scale) / scale + 0.0;
}

json or_null(const std::optional<int>& n) {
    return n ? json(*n) : json(nullptr);
}

json or_null(const std::optional<Seconds>& t, int digits) {
    return t ? rounded(t->value(), digits) : json(nullptr);
}

json column_value(const profile::BesideColumn& c) {
    json out{{"label", c.label},
             {"performer", c.performer},
             {"duration_s", or_null(c.duration, 3)},
             {"sung_s", or_null(c.sung, 2)},
             {"accompanied", nullptr},
             {"tuning_hz", nullptr},
             {"lowest_midi", nullptr},
             {"highest_midi", nullptr},
             {"notes", or_null(c.notes)},
             {"breaths", or_null(c.breaths)},
             {"phrases", or_null(c.phrases)},
             {"switches", or_null(c.switches)},
             {"stands_out", c.stands_out}};
    if (c.listening) {
        out["accompanied"] = c.listening->setting == voice::Setting::accompanied;
        out["tuning_hz"] = rounded(c.listening->tuning.value(), 2);
    }
    if (c.range) {
        out["lowest_midi"] = rounded(c.range->lowest.value(), 2);
        out["highest_midi"] = rounded(c.range->highest.value(), 2);
    }
    return out;
}

json row_value(const profile::BesideRow& row) {
    const int digits = row.share ? 4 : row.digits + 1;
    json cells = json::array();
    for (const auto& cell : row.cells) {
        if (!cell.value) {
            cells.push_back(nullptr);
            continue;
        }
        json one{{"value", rounded(*cell.value, digits)}, {"count", cell.count}};
        if (row.share)
            one["of"] = cell.of;
        else
            one["p10"] = rounded(cell.low, digits), one["p90"] = rounded(cell.high, digits);
        one["stands"] = cell.stands;
        cells.push_back(std::move(one));
    }
    return {{"figure", row.key},
            {"name", row.name},
            {"unit", row.share ? "share" : row.unit},
            {"cells", std::move(cells)}};
}

} // namespace

std::string beside_json(const profile::Beside& b) {
    json out{{"schema", "luftpause-beside/1"},
             {"piece", b.piece},
             {"columns", json::array()},
             {"facets", json::array()},
             {"rule", profile::beside_rule("1", "-1")},
             {"cautions", cautions()}};
    for (const auto& column : b.columns)
        out["columns"].push_back(column_value(column));
    for (const auto& facet : b.facets) {
        json rows = json::array();
        for (const auto& row : facet.rows)
            rows.push_back(row_value(row));
        out["facets"].push_back({{"facet", facet.key},
                                 {"name", facet.name},
                                 {"basis", facet.basis == vocabulary::Basis::measured ? "measured"
                                           : facet.basis == vocabulary::Basis::hint   ? "hint"
                                                                                      : "coach"},
                                 {"rows", std::move(rows)}});
    }
    return shown_json(out.dump(2, ' ', false, json::error_handler_t::replace)) + "\n";
}

} // namespace luft::exports
