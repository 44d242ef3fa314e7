#include "bench/songs.h"

#include "scenes/songs.h"

namespace luft::bench {
namespace {

using namespace singer;

/// What stays the same through one song.
struct Habits {
    double pace, leaps, repeats, consonants, vibrato, breaths, silent_breaths, catches, scoops, swells;
    double rate, extent, unrest;
    double breath_db;
    int head_from; ///< degree from which head register is used; 99 = never, 0 = always
};

double between(Random& r, double from, double to) {
    return from + (to - from) * r.uniform();
}
int one_of(Random& r, int n) {
    return static_cast<int>(r.uniform() * n);
}

Habits habits_of(Random& r, Form form, VoiceType voice) {
    Habits h{};
    h.pace = between(r, 0.75, 1.35), h.leaps = between(r, 0.1, 0.45), h.repeats = between(r, 0, 0.2);
    h.consonants = between(r, 0.1, 0.6);
    h.vibrato = std::array{0.0, 0.5, 0.9}[static_cast<std::size_t>(one_of(r, 3))];
    h.breaths = between(r, 0.7, 1), h.silent_breaths = between(r, 0, 0.15), h.catches = between(r, 0, 0.35);
    h.scoops = between(r, 0, 0.3), h.swells = between(r, 0.1, 0.6);
    h.rate = between(r, 4.6, 6.8), h.extent = between(r, 35, 95), h.unrest = between(r, 0, 0.12);
    h.breath_db = between(r, -42, -20); // plain to barely there
    const double chance = r.uniform();
    const bool high = voice == VoiceType::countertenor || voice == VoiceType::soprano;
    h.head_from = form == Form::two_registers || chance < 0.3 ? 6 + one_of(r, 4)
                  : high && chance < 0.7                      ? 0
                                                              : 99;
    return h;
}

Singer singer_of(Random& r, std::uint64_t seed) {
    Singer s;
    s.voice = static_cast<VoiceType>(seed % 5);
    s.rd_chest = between(r, 0.7, 1.3), s.rd_head = s.rd_chest + between(r, 0.8, 1.4),
    s.rd_per_db = between(r, 0.005, 0.03);
    s.usual_level = Decibels(between(r, -28, -16)), s.breathiness = Decibels(between(r, -40, -26));
    s.jitter = between(r, 0.001, 0.006), s.shimmer = between(r, 0.01, 0.04),
    s.wander = Cents(between(r, 2, 8));
    s.glide = Seconds(between(r, 0.05, 0.12));
    s.tuning = Hertz(between(r, 432, 448));
    s.seed = seed + 7;
    return s;
}

Key key_of(Random& r, VoiceType voice) {
    constexpr std::array<std::array<int, 7>, 4> kScales{{{0, 2, 4, 5, 7, 9, 11},   // major
                                                         {0, 2, 3, 5, 7, 8, 10},   // minor
                                                         {0, 2, 3, 5, 7, 9, 10},   // dorian
                                                         {0, 2, 4, 5, 7, 9, 10}}}; // mixolydian
    const double lowest = scenes::lowest_of(voice) + one_of(r, 5) - 1;
    return {lowest, kScales[static_cast<std::size_t>(one_of(r, 4))]};
}

class Inventor {
  public:
    Inventor(Random& r, const Habits& habits, const Key& key) : r_(r), h_(habits), key_(key) {
        degree_ = 2 + one_of(r, 6);
    }

    Phrase phrase() {
        Phrase p;
        add(p, Rest{Seconds(between(r_, 0.04, 0.25))});
        const Seconds in(between(r_, 0.2, 0.7));
        if (r_.uniform() < h_.breaths)
            add(p, breath(in));
        else
            add(p, Rest{in});
        const int count = 4 + one_of(r_, 5);
        for (int k = 0; k < count; ++k) {
            const bool caught = k >= 2 && k + 2 < count && r_.uniform() < h_.catches / 3;
            if (caught) add(p, breath(Seconds(between(r_, 0.18, 0.3))));
            add(p, note(k == 0 || caught, k + 1 == count));
        }
        add(p, Rest{Seconds(between(r_, 0.05, 0.5))});
        return p;
    }

    void interlude(Phrase& p) { add(p, Rest{Seconds(between(r_, 6, 8))}); }
    [[nodiscard]] Seconds so_far() const { return now_; }

  private:
    void add(Phrase& p, Event e) {
        now_ += std::visit([](const auto& x) { return x.length; }, e);
        p.events.push_back(std::move(e));
    }

    Breath breath(Seconds length) {
        return {length, Decibels(h_.breath_db + 3 * r_.bell()), r_.uniform() < h_.silent_breaths};
    }

    void step() {
        if (r_.uniform() < h_.repeats) return;
        int by = r_.uniform() < h_.leaps ? 2 + one_of(r_, 4) : 1;
        if (r_.uniform() < 0.5) by = -by;
        degree_ = degree_ + by < 0 || degree_ + by > 11 ? degree_ - by : degree_ + by;
    }

    SungNote note(bool first, bool last) {
        const int before = degree_;
        step();
        SungNote n;
        n.pitch = MidiPitch(key_.pitch(degree_));
        n.length = Seconds(last ? between(r_, 0.9, 1.8) : h_.pace * between(r_, 0.22, 0.75));
        n.vowel = static_cast<Vowel>(one_of(r_, 5));
        n.off = Cents(14 * r_.bell()), n.drift = Cents(10 * r_.bell());
        n.level = Decibels(3 * r_.bell());
        n.start = first ? static_cast<Start>(one_of(r_, 3)) : Start::legato;
        if (last) n.end = static_cast<marks::OffsetKind>(one_of(r_, 3));
        if (r_.uniform() < h_.consonants || (!first && degree_ == before))
            n.consonant = static_cast<Consonant>(1 + one_of(r_, 9));
        if (r_.uniform() < h_.scoops) n.scoop = Cents(between(r_, 40, 180));
        if (r_.uniform() < h_.swells)
            n.path = {static_cast<marks::LevelShape>(1 + one_of(r_, 3)), Decibels(between(r_, 2, 8))};
        if (n.length > Seconds(0.85) && r_.uniform() < h_.vibrato)
            n.vibrato =
                VibratoPlan{Hertz(h_.rate + 0.3 * r_.bell()), Cents(h_.extent * between(r_, 0.75, 1.3)),
                            Seconds(between(r_, 0.05, 0.25)), h_.unrest};
        if (degree_ >= h_.head_from) n.sung_in = marks::Register::head;
        n.broken_switch = r_.uniform() < 0.5;
        if (h_.head_from > 0 && h_.head_from < 12 && n.length > Seconds(0.8) && r_.uniform() < 0.15) {
            const bool up = n.sung_in == marks::Register::chest;
            n.flip = Flip{n.length * between(r_, 0.35, 0.65),
                          up ? marks::Register::head : marks::Register::chest, r_.uniform() < 0.5};
        }
        return n;
    }

    Random& r_;
    const Habits& h_;
    const Key& key_;
    int degree_;
    Seconds now_{0};
};

} // namespace

double Key::pitch(int degree) const {
    return lowest + 12 * (degree / 7) + scale[static_cast<std::size_t>(degree % 7)];
}

InventedSong invent(std::uint64_t seed, Form form, Seconds length) {
    Random r(seed * 7'368'787 + static_cast<std::uint64_t>(form));
    InventedSong out;
    out.singer = singer_of(r, seed);
    out.key = key_of(r, out.singer.voice);
    const Habits habits = habits_of(r, form, out.singer.voice);
    Inventor inventor(r, habits, out.key);
    Phrase lead_in;
    if (form == Form::instrumental) inventor.interlude(lead_in);
    out.song.phrases.push_back(lead_in);
    bool still_to_rest = form == Form::instrumental;
    while (inventor.so_far() < length) {
        out.song.phrases.push_back(inventor.phrase());
        if (still_to_rest && inventor.so_far() > length * 0.55) {
            inventor.interlude(out.song.phrases.back());
            still_to_rest = false;
        }
    }
    return out;
}

} // namespace luft::bench
