#include "bench/labels.h"

#include "base/error.h"

#include <cmath>
#include <fstream>
#include <map>
#include <sstream>

namespace luft::bench {
namespace {

using Row = std::map<std::string, std::string>;

std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> out;
    std::istringstream in(line);
    for (std::string cell; std::getline(in, cell, ',');) {
        while (!cell.empty() && (cell.back() == '\r' || cell.back() == ' '))
            cell.pop_back();
        out.push_back(cell);
    }
    return out;
}

std::vector<Row> rows_of(const std::filesystem::path& csv) {
    std::ifstream in(csv);
    std::string line;
    std::getline(in, line);
    const auto head = cells_of(line);
    std::vector<Row> out;
    while (std::getline(in, line)) {
        const auto cells = cells_of(line);
        Row row;
        for (std::size_t k = 0; k < std::min(head.size(), cells.size()); ++k)
            row[head[k]] = cells[k];
        out.push_back(std::move(row));
    }
    return out;
}

double number(const Row& row, const std::string& column, const std::filesystem::path& csv) {
    try {
        return std::stod(row.at(column));
    } catch (const std::exception&) {
        throw Error(Fault::unreadable, csv.string() + " has a row without a number in " + column + ".");
    }
}

marks::Register register_of(const std::string& word) {
    return word == "head" ? marks::Register::head : marks::Register::chest;
}

void take(Truth& to, const std::string& kind, const std::string& label, Span span) {
    if (kind == "breath" || kind == "no_breath") {
        if (!to.breaths) to.breaths.emplace();
        const bool doubtful =
            label.find("uncertain") != std::string::npos || label.find("faint") != std::string::npos;
        if (kind == "breath") to.breaths->push_back({span, true, false, doubtful});
    } else if (kind == "phrase") {
        if (!to.phrases) to.phrases.emplace();
        to.phrases->push_back(span);
    } else if (kind == "note_midi") {
        if (!to.notes) to.notes.emplace();
        to.notes->push_back({span, MidiPitch(std::strtod(label.c_str(), nullptr)), {}, {}, {}, {}});
    } else if (kind == "switch") {
        if (!to.switches) to.switches.emplace();
        const auto arrow = label.find('>');
        to.switches->push_back({span.middle(), register_of(label.substr(0, arrow)),
                                register_of(arrow == std::string::npos ? "" : label.substr(arrow + 1)),
                                false});
    }
}

/// Breaths with a phrase around them lie inside it.
void find_inside(Truth& t) {
    if (!t.breaths || !t.phrases) return;
    for (TrueBreath& b : *t.breaths)
        b.inside_phrase =
            std::ranges::any_of(*t.phrases, [&](Span p) { return p.contains(b.span.middle()); });
}

} // namespace

Truth events_of(const std::filesystem::path& csv) {
    Truth t;
    for (const Row& row : rows_of(csv)) {
        const auto kind = row.find("kind"), label = row.find("label");
        if (kind == row.end()) continue;
        take(t, kind->second, label == row.end() ? "" : label->second,
             {Seconds(number(row, "start_s", csv)), Seconds(number(row, "end_s", csv))});
    }
    find_inside(t);
    return t;
}

TruePitch pitch_of(const std::filesystem::path& csv, Seconds length) {
    constexpr double kNear = 0.02;
    const auto frames = static_cast<std::size_t>(length / kHop) + 1;
    TruePitch out{Curve<Hertz>(frames), std::vector<bool>(frames)};
    std::vector<double> distance(frames, kNear + 1e-9);
    for (const Row& row : rows_of(csv)) {
        const double t = number(row, "time_s", csv), hz = number(row, "f0_hz", csv);
        const auto middle = std::llround(t / kHop.value());
        for (auto i = std::max<std::int64_t>(0, middle - 2);
             i <= middle + 2 && i < static_cast<std::int64_t>(frames); ++i) {
            const auto at = static_cast<std::size_t>(i);
            const double off = std::abs(time_of({i}).value() - t);
            if (off >= distance[at]) continue;
            distance[at] = off;
            out.known[at] = true;
            out.hz.set(at, hz > 0 ? std::optional(Hertz(hz)) : std::nullopt);
        }
    }
    return out;
}

} // namespace luft::bench
