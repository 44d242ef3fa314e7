#include "sheet/ribbon.h"

#include "profile/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::sheet {
namespace {

constexpr std::int64_t kStep = 2;      ///< frames: 20 ms
constexpr double kJump = 1.5;          ///< semitones in 20 ms: a new piece, not a steep ribbon
constexpr double kStray = 4;           ///< semitones outside the line's range
constexpr double kLeastDifference = 6; ///< dB
constexpr double kUntold = 0.4;        ///< thickness where no level is to be had

double loudness(LevelRange range, std::optional<Decibels> level) {
    if (!level) return kUntold;
    const double difference = std::max((range.loud - range.soft).value(), kLeastDifference);
    return std::clamp((*level - range.soft).value() / difference, 0.0, 1.0);
}

std::vector<RibbonPiece> from_notes(const std::vector<const marks::Note*>& notes, double tuning,
                                    LevelRange levels) {
    std::vector<RibbonPiece> out;
    for (const auto* n : notes) {
        const double pitch = n->pitch.value() - tuning, loud = loudness(levels, n->level);
        out.push_back({{{n->span.start, pitch, loud}, {n->span.end, pitch, loud}}, n->sung_in});
    }
    return out;
}

/// Collects points into pieces that break where the pitch jumps or the register changes.
class Pieces {
  public:
    void add(const RibbonPoint& point, std::optional<marks::Register> told) {
        if (!points_.empty() && std::abs(point.pitch - points_.back().pitch) > kJump) finish();
        if (!points_.empty() && told && now_ && *told != *now_) {
            points_.push_back(point); // the pieces meet
            finish();
        }
        if (points_.empty() || !now_) now_ = told;
        points_.push_back(point);
    }
    void finish() {
        if (points_.size() >= 2) out_.push_back({std::move(points_), now_});
        points_.clear();
    }
    std::vector<RibbonPiece> take() {
        finish();
        return std::move(out_);
    }

  private:
    std::vector<RibbonPiece> out_;
    std::vector<RibbonPoint> points_;
    std::optional<marks::Register> now_;
};

} // namespace

double retuned(const profile::Source& source) {
    const Hertz a4 = source.listening ? source.listening->tuning : Hertz(440);
    return a4.value() > 0 ? 12 * std::log2(a4 / Hertz(440)) : 0;
}

LevelRange level_range(const profile::Source& source) {
    std::vector<double> levels;
    for (const auto& mark : source.marks)
        if (const auto* n = std::get_if<marks::Note>(&mark.what)) levels.push_back(n->level.value());
    const double soft = profile::percentile(levels, 0.1).value_or(-40);
    const double loud = profile::percentile(levels, 0.95).value_or(-10);
    return {Decibels(soft - 3), Decibels(std::max(loud, soft + kLeastDifference))};
}

std::vector<RibbonPiece> ribbon(const profile::Source& source, Span span,
                                const std::vector<const marks::Note*>& notes, double low, double high,
                                LevelRange levels) {
    const double tuning = retuned(source);
    Pieces pieces;
    auto note = notes.begin();
    const auto first = nearest_frame(span.start).value, last = nearest_frame(span.end).value;
    for (auto f = first; f <= last; f += kStep) {
        const auto hertz = source.curves.f0.at(FrameIndex{f});
        const double midi = hertz && hertz->value() > 0 ? pitch_of(*hertz).value() - tuning : -1e9;
        if (midi < low - kStray || midi > high + kStray) {
            pieces.finish();
            continue;
        }
        const Seconds t = time_of({f});
        while (note != notes.end() && (*note)->span.end <= t)
            ++note;
        const bool in_note = note != notes.end() && (*note)->span.contains(t);
        pieces.add({t, midi, loudness(levels, source.curves.level.at(FrameIndex{f}))},
                   in_note ? (*note)->sung_in : std::nullopt);
    }
    auto out = pieces.take();
    return out.empty() ? from_notes(notes, tuning, levels) : out;
}

} // namespace luft::sheet
