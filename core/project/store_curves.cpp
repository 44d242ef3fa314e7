// What listening has measured: the summary and the curves.
#include "project/store_curves.h"

#include "project/curve_columns.h"
#include "project/store.h"
#include "project/words.h"

namespace luft::project {
namespace {

void expect_one_length(const voice::Curves& curves) {
    for_each_curve(curves, [&](std::string_view name, const auto& curve) {
        if (curve.size() != curves.frames())
            throw Error(Fault::internal, "The curve '" + std::string(name) + "' has " +
                                             std::to_string(curve.size()) + " frames instead of " +
                                             std::to_string(curves.frames()) + ".");
    });
}

} // namespace

void write_listening(Database& database, PerformanceId id, const marks::Analysis& a) {
    expect_one_length(a.curves);
    database.run(
        "INSERT OR REPLACE INTO listening (performance, setting, tuning_hz, integrated_lufs, range_lu, "
        "true_peak_dbtp, one_register, duration_s, frames) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        id.value, word(a.setting), a.tuning, a.loudness.integrated, a.loudness.range, a.loudness.true_peak,
        a.one_register, a.duration, static_cast<std::int64_t>(a.curves.frames()));
    database.run("DELETE FROM curve WHERE performance = ?", id.value);
    Statement insert = database.prepare("INSERT INTO curve (performance, name, samples) VALUES (?, ?, ?)");
    for_each_curve(a.curves, [&](std::string_view name, const auto& curve) {
        const std::vector<std::byte> bytes = to_column(curve.raw());
        insert.bind(id.value, name, std::span<const std::byte>(bytes)).run();
    });
}

std::optional<Listening> Project::listening(PerformanceId id) const {
    const Transaction reading = store_->reading();
    label_of(store_->database, id);
    Statement row = store_->database.query(
        "SELECT setting, tuning_hz, integrated_lufs, range_lu, true_peak_dbtp, one_register, duration_s "
        "FROM listening WHERE performance = ?",
        id.value);
    if (!row.step()) return std::nullopt;
    Listening l;
    l.setting = read_word<voice::Setting>(row.text(0));
    l.tuning = row.unit<Hertz>(1);
    l.loudness = {row.maybe<Lufs>(2), row.maybe<LoudnessUnits>(3), row.maybe<Decibels>(4)};
    l.one_register = row.truth(5);
    l.duration = row.unit<Seconds>(6);
    return l;
}

voice::Curves Project::curves(PerformanceId id) const {
    const Transaction reading = store_->reading();
    Database& database = store_->database;
    const std::string label = label_of(database, id);
    voice::Curves curves;
    Statement summary = database.query("SELECT frames FROM listening WHERE performance = ?", id.value);
    if (!summary.step()) return curves;
    const auto frames = static_cast<std::size_t>(summary.integer(0));
    Statement rows = database.prepare("SELECT samples FROM curve WHERE performance = ? AND name = ?");
    for_each_curve(curves, [&]<class Unit>(std::string_view name, Curve<Unit>& curve) {
        rows.bind(id.value, name);
        const bool there = rows.step();
        const auto bytes = there ? rows.blob(0) : std::span<const std::byte>();
        if (bytes.size() != frames * sizeof(float))
            throw Error(Fault::unreadable,
                        "The curve '" + std::string(name) + "' of '" + label + "' is damaged.",
                        "Listen to the performance again; marks and moments stay as they are.");
        curve = Curve<Unit>(from_column(bytes));
        rows.reset();
    });
    return curves;
}

} // namespace luft::project
