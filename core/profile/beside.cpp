#include "profile/beside.h"

#include "profile/apart.h"
#include "profile/beside_words.h"
#include "profile/words.h"

#include <algorithm>
#include <cmath>

namespace luft::profile {
namespace {

constexpr double kByChance = 0.0027;

/// The place of a key among what is there already; else it is put after the one found before, so that each
/// profile's own order stays.
template <class List>
std::size_t place_of(List& list, const std::string& key, std::size_t after) {
    const auto found = std::ranges::find(list, key, [](const auto& one) { return one.key; });
    if (found != list.end()) return static_cast<std::size_t>(found - list.begin());
    const auto at = list.emplace(list.begin() + static_cast<std::ptrdiff_t>(std::min(after, list.size())));
    at->key = key;
    return static_cast<std::size_t>(at - list.begin());
}

BesideRow& row_of(BesideFacet& facet, const std::string& key, std::size_t& next, std::size_t columns) {
    const std::size_t at = place_of(facet.rows, key, next);
    next = at + 1;
    facet.rows[at].cells.resize(columns);
    return facet.rows[at];
}

void add_measures(BesideFacet& facet, const FacetProfile& from, std::size_t column, std::size_t columns) {
    std::size_t next = 0;
    for (const Measure& m : from.measures) {
        BesideRow& row = row_of(facet, m.key, next, columns);
        row.name = m.name, row.unit = m.unit, row.digits = m.digits;
        BesideCell& cell = row.cells[column];
        cell.value = m.median, cell.low = m.low, cell.high = m.high, cell.count = m.count;
    }
}

void add_shades(BesideFacet& facet, const FacetProfile& from, std::size_t column, std::size_t columns) {
    std::size_t next = facet.rows.size();
    for (const ShadeShare& s : from.shades) {
        BesideRow& row = row_of(facet, "shade:" + s.axis + ":" + s.tag.shade, next, columns);
        row.name = capital(s.axis) == from.name ? s.name : s.name + " (" + s.axis + ")";
        row.share = true;
        BesideCell& cell = row.cells[column];
        cell.value = cell.low = cell.high = s.share;
        cell.count = s.count, cell.out_of = s.out_of, cell.of = s.of;
    }
}

/// A shade that doesn't occur is told as none of so many, where there was anything to show it.
void add_zeros(BesideFacet& facet, const std::vector<Profile>& profiles) {
    for (BesideRow& row : facet.rows)
        for (std::size_t c = 0; row.share && c < row.cells.size(); ++c) {
            if (row.cells[c].value) continue;
            const auto& facets = profiles[c].facets;
            const auto here = std::ranges::find(facets, facet.key, &FacetProfile::key);
            if (here == facets.end()) continue;
            for (const ShadeAxis& axis : here->axes)
                if (row.key.starts_with("shade:" + axis.name + ":")) {
                    row.cells[c].value = 0;
                    row.cells[c].out_of = axis.out_of, row.cells[c].of = axis.of;
                    break;
                }
        }
}

bool enough(const BesideRow& row, const BesideCell& cell) {
    return cell.value && (row.share ? cell.out_of : cell.count) >= kLeastBeside;
}

bool far_apart(const BesideRow& row, const BesideCell& x, const BesideCell& y) {
    if (row.share) {
        // What is tested are places; a few long ones may hold more time than many short ones.
        const double by_count =
            static_cast<double>(x.count) / x.out_of - static_cast<double>(y.count) / y.out_of;
        return std::abs(*x.value - *y.value) >= kLeastShare && by_count * (*x.value - *y.value) > 0 &&
               fisher(x.count, x.out_of, y.count, y.out_of) < kByChance;
    }
    return apart({*x.value, x.low, x.high, x.count}, {*y.value, y.low, y.high, y.count});
}

/// Whether figures of a facet mean the same in both. An accompaniment covers breaths.
bool comparable(const BesideFacet& facet, const BesideColumn& x, const BesideColumn& y) {
    return facet.key != "breath" || !x.listening || !y.listening ||
           x.listening->setting == y.listening->setting;
}

/// Beyond all others that can be compared and have enough values, in one direction.
int stands(const Beside& all, const BesideFacet& facet, const BesideRow& row, std::size_t column) {
    const BesideCell& cell = row.cells[column];
    int above = 0, below = 0, others = 0;
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
        const BesideCell& other = row.cells[c];
        if (c == column || !held_against(all, facet, row, column, c)) continue;
        ++others;
        if (far_apart(row, cell, other)) ++(*cell.value > *other.value ? above : below);
    }
    return others == 0 ? 0 : above == others ? 1 : below == others ? -1 : 0;
}

BesideColumn column_of(const Profile& p) {
    BesideColumn out;
    out.label = p.label, out.performer = p.performer, out.source = p.source;
    if (p.duration > Seconds(0)) out.duration = p.duration;
    out.listening = p.listening, out.range = p.range;
    const auto found = [&](int marks) {
        return p.listening || marks > 0 ? std::optional(marks) : std::nullopt;
    };
    out.notes = found(p.notes), out.breaths = found(p.breaths);
    out.phrases = found(p.phrases), out.switches = found(p.switches);
    if (out.notes) out.sung = p.sung;
    return out;
}

} // namespace

bool held_against(const Beside& all, const BesideFacet& facet, const BesideRow& row, std::size_t x,
                  std::size_t y) {
    return enough(row, row.cells[x]) && enough(row, row.cells[y]) &&
           comparable(facet, all.columns[x], all.columns[y]);
}

Beside set_beside(const std::vector<Profile>& profiles) {
    Beside out;
    for (std::size_t c = 0; c < profiles.size(); ++c) {
        if (out.piece.empty()) out.piece = profiles[c].piece;
        out.columns.push_back(column_of(profiles[c]));
        std::size_t next = 0;
        for (const FacetProfile& from : profiles[c].facets) {
            const std::size_t at = place_of(out.facets, from.key, next);
            next = at + 1;
            BesideFacet& facet = out.facets[at];
            facet.name = from.name, facet.basis = from.basis;
            add_measures(facet, from, c, profiles.size());
        }
    }
    for (BesideFacet& facet : out.facets) {
        for (std::size_t c = 0; c < profiles.size(); ++c)
            for (const FacetProfile& from : profiles[c].facets)
                if (from.key == facet.key) add_shades(facet, from, c, profiles.size());
        add_zeros(facet, profiles);
        for (BesideRow& row : facet.rows)
            for (std::size_t c = 0; facet.basis == vocabulary::Basis::measured && c < profiles.size(); ++c) {
                row.cells[c].stands = stands(out, facet, row, c);
                if (row.cells[c].stands != 0)
                    out.columns[c].stands_out.push_back(stands_words(out, facet, row, c));
            }
    }
    std::erase_if(out.facets, [](const BesideFacet& facet) { return facet.rows.empty(); });
    return out;
}

} // namespace luft::profile
