#include "singer/control.h"

#include "singer/lf.h"
#include "singer/loudness_plan.h"
#include "singer/noises.h"
#include "singer/pitch_plan.h"

#include <algorithm>
#include <cmath>

namespace luft::singer {
namespace {

using marks::OffsetKind;
using marks::Register;

/// What one note asks for at a time, before onset, offset and joins.
struct Wish {
    double rd = 1, head = 0, voice_db = 0, noise_db = 0;
    Formants formants{};
};

class Steering {
  public:
    Steering(const Layout& layout, const Singer& singer, SampleRate rate, Random random)
        : notes_(layout.notes), singer_(singer), pitch_(layout, singer, random.fork()) {
        GainBook book(rate);
        for (const PlacedNote& n : notes_)
            gains_.push_back(book.gains(n.note, singer));
    }

    Control at(double t) {
        while (now_ + 1 < notes_.size() && notes_[now_ + 1].whole.start.value() <= t)
            ++now_;
        Control c;
        if (notes_.empty()) return c;
        c.pitch = pitch_.at(now_, t);
        Wish w = wish(now_, t);
        const Neighbour n = neighbour(notes_, now_, t, kBlend);
        if (n.share > 0) w = mix(w, wish(n.index, t), n.share);
        murmur_into(w, t);
        c.head = w.head;
        c.rd = w.rd;
        c.formants = w.formants;
        c.jitter = singer_.jitter;
        c.shimmer = singer_.shimmer;
        const PlacedNote& note = notes_[now_];
        c.voicing = voicing_of(note, t);
        double noise = c.voicing * amplitude_of(Decibels(w.noise_db) + tone_noise(c.head));
        colour_onset(c, note, t, w.noise_db, noise);
        colour_offset(c, note, t, w.noise_db, noise);
        const Crack crack = pitch_.crack(t);
        c.voice = c.voicing * amplitude_of(Decibels(w.voice_db + crack.level_db));
        c.jitter += 0.03 * crack.roughness;
        c.rd = std::clamp(c.rd, 0.3, 2.7);
        c.noise = noise;
        return c;
    }

  private:
    static constexpr double kBlend =
        0.060; // vowels, registers and levels pass into each other; common practice

    Decibels tone_noise(double head) const { return singer_.breathiness + Decibels(4 * head); }

    Wish wish(std::size_t i, double t) const {
        const PlacedNote& n = notes_[i];
        Wish w;
        w.head = head_of(n, t);
        const double level = n.note.level.value() + path_db(n, t);
        w.rd = singer_.rd_chest + (singer_.rd_head - singer_.rd_chest) * w.head - singer_.rd_per_db * level;
        const Gains& g = gains_[i];
        w.voice_db = singer_.usual_level.value() + level + g.chest_db + (g.head_db - g.chest_db) * w.head;
        w.noise_db = singer_.usual_level.value() + level + g.noise_db;
        w.formants = formants_of(n.note, singer_);
        return w;
    }

    static Wish mix(const Wish& a, const Wish& b, double share) {
        const auto between = [share](double x, double y) { return x + (y - x) * share; };
        Wish w{between(a.rd, b.rd), between(a.head, b.head), between(a.voice_db, b.voice_db),
               between(a.noise_db, b.noise_db), a.formants};
        for (std::size_t k = 0; k < 5; ++k) {
            w.formants[k].frequency += (b.formants[k].frequency - a.formants[k].frequency) * share;
            w.formants[k].bandwidth += (b.formants[k].bandwidth - a.formants[k].bandwidth) * share;
        }
        return w;
    }

    /// A voiced consonant at the start of the note: its murmur in place of the vowel.
    void murmur_into(Wish& w, double t) const {
        const PlacedNote& n = notes_[now_];
        if (!is_voiced(n.note.consonant)) return;
        const double from = n.whole.start.value(), to = from + length_of(n.note.consonant).value();
        const double share = n.joined ? step_up(t, from, 0.02) * (1 - step_up(t, to - 0.03, 0.04))
                                      : 1 - step_up(t, to - 0.03, 0.04);
        Wish m = w;
        m.formants = murmur(n.note.consonant);
        m.voice_db += gains_[now_].murmur_db - gains_[now_].chest_db + level_of(n.note.consonant).value();
        w = mix(w, m, share);
    }

    void colour_onset(Control& c, const PlacedNote& n, double t, double noise_db, double& noise) const {
        if (n.joined) return;
        const double from = n.whole.start.value(), voice = n.voiced.start.value();
        const bool hissed = n.note.consonant != Consonant::none && !is_voiced(n.note.consonant);
        if (n.note.consonant == Consonant::h || (!hissed && n.note.start == Start::breathy)) {
            constexpr double kOnsetNoise = -17; // dB against the tone; tuned by looking at spectrograms
            const double swell = step_up(t, from, std::max(1e-3, 0.5 * (voice - from)));
            const double fade = 1 - step_up(t, voice, 0.16);
            noise += swell * fade * amplitude_of(Decibels(noise_db + kOnsetNoise));
            if (t >= from) c.rd += 1.0 * fade;
        } else if (!hissed && n.note.start == Start::glottal) {
            const double left = 1 - step_up(t, voice, 0.07);
            c.rd += (0.45 - c.rd) * left; // pressed for a few cycles
            c.jitter += 0.09 * left;
            c.shimmer += 0.35 * left;
        }
    }

    void colour_offset(Control& c, const PlacedNote& n, double t, double noise_db, double& noise) const {
        if (n.joins || n.cut || n.note.end != OffsetKind::breathy) return;
        constexpr double kOffsetNoise = -19;
        const double voice_end = n.voiced.end.value(), end = n.whole.end.value();
        const double swell = step_up(t, voice_end - 0.12, 0.1);
        const double fade = 1 - step_up(t, end - 0.5 * (end - voice_end), 0.5 * (end - voice_end));
        noise += swell * fade * amplitude_of(Decibels(noise_db + kOffsetNoise));
        c.rd += 0.8 * swell;
    }

    const std::vector<PlacedNote>& notes_;
    const Singer& singer_;
    PitchPlan pitch_;
    std::vector<Gains> gains_;
    std::size_t now_ = 0;
};

} // namespace

std::vector<Control> steer(const Layout& layout, const Singer& singer, SampleRate rate, Seconds length,
                           Random random) {
    Steering steering(layout, singer, rate, random);
    std::vector<Control> out;
    for (std::size_t i = 0;; ++i) {
        const Seconds t = kControlStep * static_cast<double>(i);
        out.push_back(steering.at(t.value()));
        if (t > length) return out;
    }
}

} // namespace luft::singer
