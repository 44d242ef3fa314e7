#include "bench/design_table.h"

#include "base/text.h"
#include "signal/statistics.h"

namespace luft::bench {
namespace {

using Names = std::vector<std::string>;

Scores sum_of(const std::vector<GroupScores>& groups, const Names& names) {
    Scores sum;
    for (const GroupScores& g : groups)
        if (std::ranges::count(names, g.name) > 0) sum += g.scores;
    return sum;
}

enum class Bound { least, most };

/// A row: the verdict is computed from the number, not from its rounded text.
struct Row {
    std::string work, target;
    Bound bound;
    double limit;
    std::optional<double> measured;
    int digits;
    std::string unit, on;
};

std::vector<std::string> cells_of(const Row& r) {
    if (!r.measured) return {r.work, r.target, "–", "not measured", r.on};
    const bool met = r.bound == Bound::least ? *r.measured >= r.limit : *r.measured <= r.limit;
    return {r.work, r.target, fixed(*r.measured, r.digits) + r.unit, met ? "met" : "missed", r.on};
}

std::optional<double> f1(const reference::Score& s) {
    return s.there > 0 ? std::optional(s.f()) : std::nullopt;
}
std::optional<double> raw_pitch(const Scores& s) {
    const auto m = s.pitch.score();
    return m.voiced_frames > 0 ? std::optional(m.raw_pitch) : std::nullopt;
}

const Names kAlone{"alone"}, kBands{"band +12", "band +6", "band 0", "band +6 mono", "band 0 mono"},
    kWithSwitches{"alone", "two registers"};

std::vector<Row> machine_rows(const Machine& m) {
    const auto factor = [](const std::optional<Speed>& s) {
        return s ? std::optional(s->real_time_factor) : std::nullopt;
    };
    const std::string on = "processor time, decoding included", no = "tests/bench/desk, in desk.md";
    return {{"whole analysis, solo voice, 44.1 kHz", "at least 60 x real time", Bound::least, 60,
             factor(m.solo), 1, " x", on},
            {"whole analysis, accompanied, 44.1 kHz stereo", "at least 25 x real time", Bound::least, 25,
             factor(m.accompanied), 1, " x", on},
            {"memory for one hour of media", "under 400 MB", Bound::most, 400, m.hour_megabytes, 0, " MB",
             "a process that listens to an hour"},
            {"opening a project with an hour of marks, to first paint",
             "under 0.3 s",
             Bound::most,
             0.3,
             {},
             2,
             " s",
             no},
            {"painting the sheet while scrolling and playing",
             "under 8 ms a frame",
             Bound::most,
             8,
             {},
             1,
             " ms",
             no}};
}

std::vector<Row> ear_rows(const std::vector<GroupScores>& groups) {
    const Scores alone = sum_of(groups, kAlone), bands = sum_of(groups, kBands);
    const Scores level = sum_of(groups, {"band 0", "band 0 mono"});
    return {
        {"solo pitch, raw pitch accuracy at 50 cents", "0.98 and more", Bound::least, 0.98, raw_pitch(alone),
         3, "", "alone"},
        {"accompanied at 0 dB voice-to-accompaniment", "0.85 and more", Bound::least, 0.85, raw_pitch(level),
         3, "", "band 0, stereo and mono"},
        {"breaths, solo, F1", "0.95 and more", Bound::least, 0.95, f1(alone.breaths), 3, "", "alone"},
        {"phrase ends, F1 at 0.3 s, solo", "0.95", Bound::least, 0.95, f1(alone.phrase_ends), 3, "", "alone"},
        {"phrase ends, F1 at 0.3 s, accompanied", "0.85", Bound::least, 0.85, f1(bands.phrase_ends), 3, "",
         "all of ours with a band"},
        {"register switches, F1 at 0.15 s", "0.90 solo", Bound::least, 0.90,
         f1(sum_of(groups, kWithSwitches).switches), 3, "", "alone, two registers"},
        {"note starts, F1 at 50 ms", "0.90 solo", Bound::least, 0.90, f1(alone.notes), 3, "", "alone"},
        {"vibrato rate", "within 0.15 Hz", Bound::most, 0.15, signal::median(std::span(alone.vibrato_rate)),
         3, " Hz", "median error, alone"}};
}

} // namespace

Table design_table(const std::vector<GroupScores>& groups, const Machine& machine) {
    Table t{"Figures to reach",
            "The plan's targets beside what this run measured; the verdict is computed.",
            {"work", "target", "measured", "verdict", "on"},
            {}};
    t.words = {0, 1, 2, 3, 4};
    for (const Row& r : machine_rows(machine))
        t.rows.push_back(cells_of(r));
    for (const Row& r : ear_rows(groups))
        t.rows.push_back(cells_of(r));
    const auto& l = machine.loudness;
    t.rows.push_back(
        cells_of({"loudness: integrated", "EBU Tech 3341: within 0.1 LU", Bound::most, 0.1,
                  l ? std::optional(l->integrated) : std::nullopt, 3, " LU", "cases 1 to 5, the worst"}));
    t.rows.push_back(
        cells_of({"loudness: range", "EBU Tech 3342: within 1 LU", Bound::most, 1,
                  l ? std::optional(l->range) : std::nullopt, 3, " LU", "cases 1 to 4, the worst"}));
    t.rows.push_back(cells_of({"counterpart notes, median error",
                               "under 50 ms",
                               Bound::most,
                               50,
                               {},
                               0,
                               " ms",
                               "two performances aren't compared yet"}));
    return t;
}

Table speed_table(const Machine& machine) {
    Table t{"Time and memory",
            "Of one core, by processor time; the floor is decoding, bringing to the ear's rate and one "
            "transform a hop, "
            "measured in the same run.",
            {"what", "x real time", "x the floor"},
            {}};
    const auto row = [&](const std::string& what, const std::optional<Speed>& s) {
        if (s) t.rows.push_back({what, fixed(s->real_time_factor, 1), fixed(s->over_floor, 2)});
    };
    row("voice alone, one channel", machine.solo);
    row("voice over a band, two channels", machine.accompanied);
    return t;
}

} // namespace luft::bench
