// How a found pitch line is scored against the true one: the measures of MIREX audio melody extraction.
#pragma once

#include "base/curve.h"

#include <cmath>

namespace luft::reference {

/// Poliner et al. 2007 (IEEE TASLP 15(4)) and Salamon et al. 2014 (IEEE Signal Processing Magazine 31(2)).
struct MelodyScore {
    double voicing_recall = 0;      ///< voiced and said to be voiced / truly voiced
    double voicing_false_alarm = 0; ///< unvoiced but said to be voiced / truly unvoiced
    double raw_pitch = 0;           ///< truly voiced with a guess strictly under 50 cents off / truly voiced
    double raw_chroma = 0;          ///< the same with whole octaves taken out of the error
    double overall = 0;             ///< right in voicing and, where voiced, in pitch / all
    double voiced_frames = 0;
};

/// Running sums of it; frames of several files can be added up.
class MelodyTally {
  public:
    /// `truth` 0 = unvoiced; `said` negative = called unvoiced but with that guess at the pitch, 0 = no
    /// guess.
    void add(double truth, double said) {
        const double guess = std::abs(said);
        ++all_;
        if (truth <= 0) {
            ++unvoiced_;
            said > 0 ? ++false_alarms_ : ++right_;
            return;
        }
        ++voiced_;
        if (said > 0) ++recalled_;
        if (guess <= 0) return;
        const double off = 1200 * std::log2(guess / truth);
        const double chroma = off - 1200 * std::round(off / 1200);
        if (std::abs(off) < kTolerance) {
            ++pitch_;
            if (said > 0) ++right_;
        }
        if (std::abs(chroma) < kTolerance) ++chroma_;
    }

    void add(const Curve<Hertz>& truth, const Curve<Hertz>& said) {
        for (std::size_t i = 0; i < truth.size(); ++i) {
            const FrameIndex at{static_cast<std::int64_t>(i)};
            add(truth.at(at).value_or(Hertz(0)).value(), said.at(at).value_or(Hertz(0)).value());
        }
    }

    MelodyTally& operator+=(const MelodyTally& o) {
        all_ += o.all_, voiced_ += o.voiced_, unvoiced_ += o.unvoiced_, recalled_ += o.recalled_;
        false_alarms_ += o.false_alarms_, pitch_ += o.pitch_, chroma_ += o.chroma_, right_ += o.right_;
        return *this;
    }

    [[nodiscard]] MelodyScore score() const {
        const auto share = [](double part, double of) { return of > 0 ? part / of : 0; };
        return {share(recalled_, voiced_), share(false_alarms_, unvoiced_),
                share(pitch_, voiced_),    share(chroma_, voiced_),
                share(right_, all_),       voiced_};
    }

    static constexpr double kTolerance = 50; ///< cents

  private:
    double all_ = 0, voiced_ = 0, unvoiced_ = 0, recalled_ = 0, false_alarms_ = 0, pitch_ = 0, chroma_ = 0,
           right_ = 0;
};

} // namespace luft::reference
