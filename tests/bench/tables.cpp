#include "bench/tables.h"

#include "bench/aubio.h"
#include "signal/statistics.h"

namespace luft::bench {
namespace {

using reference::Score;

std::optional<double> f1(const Score& s) {
    return s.said + s.there > 0 ? std::optional(s.f()) : std::nullopt;
}
std::optional<double> precision(const Score& s) {
    return share(s.hits, s.said);
}
std::optional<double> recall(const Score& s) {
    return share(s.hits, s.there);
}
std::optional<double> half(const std::vector<double>& values) {
    return signal::median(std::span(values));
}

} // namespace

Table pitch_table(const std::vector<GroupScores>& groups) {
    Table t{
        "Pitch",
        "Measures of MIREX audio melody extraction (Poliner et al. 2007; Salamon et al. 2014), percent; 50 "
        "cents, "
        "10 ms. RPA raw pitch accuracy, RCA raw chroma accuracy, VR voicing recall, VFA voicing false alarm, "
        "OA overall accuracy; cents: median error where right. Beside them the best of libaubio's trackers "
        "on the same samples, shifted in time as suits it best. Setting: scenes taken for the wrong one of "
        "alone and accompanied.",
        {"group", "scenes", "RPA", "RCA", "VR", "VFA", "OA", "cents", "setting", "aubio RPA", "aubio RCA",
         "by"},
        {}};
    for (const auto& [name, kind, s] : groups) {
        const auto m = s.pitch.score();
        const auto known = [&](double v) { return m.voiced_frames > 0 ? std::optional(v) : std::nullopt; };
        const Best best = best_of(s.others);
        t.rows.push_back({name, std::to_string(s.scenes), percent(known(m.raw_pitch)),
                          percent(known(m.raw_chroma)), percent(known(m.voicing_recall)),
                          percent(known(m.voicing_false_alarm)), percent(known(m.overall)),
                          cell(half(s.cents_off), 1),
                          std::to_string(kind == Kind::solo ? s.taken_for_accompanied : s.taken_for_alone),
                          percent(best.raw_pitch), percent(best.raw_chroma), best.method});
    }
    return t;
}

Table breath_table(const std::vector<GroupScores>& groups) {
    Table t{
        "Breaths, phrases, and rests of the voice",
        "Percent. P precision, R recall; audible: recall of breaths that aren't covered. Phrase starts and "
        "ends F1 at 0.3 s, "
        "in brackets with boundaries at breaths inside a phrase forgiven. Rests: seconds of notes claimed a "
        "minute where nobody sings for 3 s and longer.",
        {"group", "breaths", "P", "R", "F1", "audible", "starts F1", "(lenient)", "ends F1", "(lenient)",
         "rests"},
        {}};
    for (const auto& [name, kind, s] : groups)
        t.rows.push_back(
            {name, cell(s.breaths.there, 0), percent(precision(s.breaths)), percent(recall(s.breaths)),
             percent(f1(s.breaths)), percent(recall(s.audible_breaths)), percent(f1(s.phrase_starts)),
             percent(f1(s.lenient_starts)), percent(f1(s.phrase_ends)), percent(f1(s.lenient_ends)),
             cell(share(60 * s.instrumental.part, s.instrumental.of), 1)});
    return t;
}

Table note_table(const std::vector<GroupScores>& groups) {
    Table t{"Notes and vibrato",
            "Note starts within 50 ms, and with the pitch within 50 cents: F1, percent (MIREX note tracking; "
            "Molina et al. 2014). "
            "Kinds: accuracy and macro-F1, percent. Vibrato: F1, percent, and median errors.",
            {"group", "notes", "starts F1", "+ pitch", "onset kind", "macro-F1", "offset kind", "macro-F1",
             "vibrato F1", "rate, Hz", "extent, cents"},
            {}};
    for (const auto& [name, kind, s] : groups) {
        const auto known = [](const Confusion& c, double v) {
            return c.all() > 0 ? std::optional(v) : std::nullopt;
        };
        t.rows.push_back(
            {name, cell(s.notes.there, 0), percent(f1(s.notes)), percent(f1(s.pitched_notes)),
             percent(known(s.onsets, s.onsets.accuracy())), percent(known(s.onsets, s.onsets.macro_f())),
             percent(known(s.offsets, s.offsets.accuracy())), percent(known(s.offsets, s.offsets.macro_f())),
             percent(f1(s.vibratos)), cell(half(s.vibrato_rate), 3), cell(half(s.vibrato_extent), 1)});
    }
    return t;
}

Table sound_table(const std::vector<GroupScores>& groups) {
    Table t{
        "Registers, formants, level",
        "Switches within 0.15 s in the right direction, percent. Register: share of frames right, in songs "
        "that use both; split: songs in "
        "one register taken for two, of how many. F1, F2: median relative error, percent, of the share of "
        "notes under 400 Hz that "
        "were given a vowel. Level: spread (standard deviation, mean over scenes) of the difference from the "
        "true level.",
        {"group", "switches", "P", "R", "F1", "register", "split", "F1 off", "F2 off", "given", "level, dB"},
        {}};
    for (const auto& [name, kind, s] : groups) {
        double spread = 0;
        for (const double v : s.level_spread)
            spread += v;
        t.rows.push_back(
            {name, cell(s.switches.there, 0), percent(precision(s.switches)), percent(recall(s.switches)),
             percent(f1(s.switches)), percent(share(s.registers.part, s.registers.of)),
             s.split.of > 0 ? cell(s.split.part, 0) + " of " + cell(s.split.of, 0) : "–",
             percent(half(s.f1_error)), percent(half(s.f2_error)), percent(share(s.vowels.part, s.vowels.of)),
             cell(share(spread, static_cast<double>(s.level_spread.size())), 2)});
    }
    return t;
}

Table onset_table(const std::vector<GroupScores>& groups) {
    Table t{"Onset kinds, what for what",
            "Of each true kind, how many were called glottal, breathy, balanced.",
            {"group", "glottal", "breathy", "balanced"},
            {}};
    for (const auto& [name, kind, s] : groups) {
        if (s.onsets.all() == 0) continue;
        std::vector<std::string> row{name};
        for (const auto& counts : s.onsets.counts)
            row.push_back(cell(counts[0], 0) + " / " + cell(counts[1], 0) + " / " + cell(counts[2], 0));
        t.rows.push_back(std::move(row));
    }
    return t;
}

Table calibration_table(const std::vector<GroupScores>& groups) {
    Table t{
        "Calibration",
        "In each bin of confidence: marks, their mean confidence, and the share of them that is right, "
        "percent. ECE: expected calibration "
        "error (Guo et al. 2017). Each kind over all groups of voices alone, and over all with instruments.",
        {"mark", "marks", "0–.2", ".2–.4", ".4–.6", ".6–.8", ".8–1", "ECE"},
        {}};
    for (const Kind kind : {Kind::solo, Kind::among_instruments}) {
        Calibration sum;
        for (const GroupScores& g : groups)
            if (g.kind == kind)
                for (const auto& [mark, r] : g.scores.calibration)
                    sum[mark] += r;
        for (const auto& [mark, r] : sum) {
            std::vector<std::string> row{mark + (kind == Kind::solo ? ", alone" : ", with instruments"),
                                         cell(r.count(), 0)};
            for (const auto& b : r.bins())
                row.push_back(b.count > 0 ? cell(b.count, 0) + ": " + cell(100 * b.confidence / b.count, 0) +
                                                " → " + cell(100 * b.right / b.count, 0)
                                          : "–");
            row.push_back(percent(r.error()));
            t.rows.push_back(std::move(row));
        }
    }
    return t;
}

std::vector<Table> score_tables(const std::vector<GroupScores>& groups) {
    return {pitch_table(groups), breath_table(groups), note_table(groups),
            sound_table(groups), onset_table(groups),  calibration_table(groups)};
}

} // namespace luft::bench
