#include "export/marks_csv.h"

#include "base/text.h"
#include "export/csv.h"
#include "export/mark_words.h"

#include <array>

namespace luft::exports {
namespace {

constexpr int kTimeDigits = 3;
constexpr int kValueDigits = 2;

/// The columns, and a place for each in a record.
enum Column : std::size_t {
    id,
    performance,
    kind,
    state,
    origin,
    start,
    end,
    confidence,
    midi,
    note,
    cents,
    drift,
    scoop,
    vibrato_rate,
    vibrato_extent,
    vibrato_regularity,
    onset,
    offset,
    f1,
    f2,
    vowel,
    sung_in,
    level,
    level_change,
    level_shape,
    breath,
    inside_phrase,
    from,
    to,
    leap,
    why,
    level_rise,
    level_peak,
    dynamic,
    column_count
};

constexpr std::array<std::string_view, column_count> kTitles = {"id",
                                                                "performance",
                                                                "kind",
                                                                "state",
                                                                "origin",
                                                                "start_s",
                                                                "end_s",
                                                                "confidence",
                                                                "midi",
                                                                "note",
                                                                "cents",
                                                                "drift_cents",
                                                                "scoop_cents",
                                                                "vibrato_rate_hz",
                                                                "vibrato_extent_cents",
                                                                "vibrato_regularity",
                                                                "onset",
                                                                "offset",
                                                                "f1_hz",
                                                                "f2_hz",
                                                                "vowel",
                                                                "register",
                                                                "level_db",
                                                                "level_change_db",
                                                                "level_shape",
                                                                "breath",
                                                                "inside_phrase",
                                                                "from",
                                                                "to",
                                                                "leap",
                                                                "why",
                                                                "level_rise_db",
                                                                "level_peak_share",
                                                                "dynamic"};

using Record = std::vector<std::string>;

std::string value(double number) {
    return fixed(number, kValueDigits);
}

void fill(Record& record, const marks::Note& it) {
    record[midi] = fixed(it.pitch.value(), kTimeDigits);
    record[note] = note_name(it.pitch);
    record[cents] = value(it.cents.value());
    record[drift] = value(it.drift.value());
    if (it.scoop) record[scoop] = value(it.scoop->value());
    if (it.vibrato) {
        record[vibrato_rate] = value(it.vibrato->rate.value());
        record[vibrato_extent] = value(it.vibrato->extent.value());
        record[vibrato_regularity] = value(it.vibrato->regularity);
    }
    record[onset] = word(it.onset.kind);
    record[offset] = word(it.offset.kind);
    if (it.vowel) {
        record[f1] = value(it.vowel->f1.value());
        record[f2] = value(it.vowel->f2.value());
        record[vowel] = it.vowel->nearest;
    }
    if (it.sung_in) record[sung_in] = word(*it.sung_in);
    record[level] = value(it.level.value());
    record[level_change] = value(it.level_change.value());
    record[level_shape] = word(it.shape);
    if (it.dynamic) record[dynamic] = word(*it.dynamic);
}

void fill(Record& record, const marks::Breath& it) {
    record[breath] = word(it.evidence_kind);
    record[inside_phrase] = it.inside_phrase ? "yes" : "no";
}

void fill(Record& record, const marks::Phrase& it) {
    if (it.dynamic) record[dynamic] = word(*it.dynamic);
    if (!it.level) return;
    record[level_change] = value(it.level->change.value());
    record[level_shape] = word(it.level->shape);
    record[level_rise] = value(it.level->rise.value());
    if (it.level->peak_at) record[level_peak] = value(*it.level->peak_at);
}

void fill(Record& record, const marks::Switch& it) {
    record[from] = word(it.from);
    record[to] = word(it.to);
    record[leap] = it.leap ? "yes" : "no";
}

Record record_of(const project::Performance& of, const project::Mark& mark) {
    Record record(column_count);
    record[id] = std::to_string(mark.id.value);
    record[performance] = csv_words(of.label);
    record[kind] = word(mark.kind());
    record[state] = word(mark.state);
    record[origin] = word(mark.origin);
    record[start] = fixed(mark.span().start.value(), kTimeDigits);
    record[end] = fixed(mark.span().end.value(), kTimeDigits);
    record[confidence] = value(mark.confidence().value);
    record[why] = csv_words(mark.evidence());
    std::visit([&](const auto& it) { fill(record, it); }, mark.what);
    return record;
}

} // namespace

std::string marks_csv(const project::Performance& performance, const std::vector<project::Mark>& marks) {
    std::string out = csv_record(Record(kTitles.begin(), kTitles.end()));
    for (const project::Mark& mark : marks)
        out += csv_record(record_of(performance, mark));
    return out;
}

} // namespace luft::exports
