#include "compare/material.h"

#include "signal/statistics.h"
#include "singer/random.h"

#include <array>
#include <cmath>
#include <map>

namespace luft::compare::test {
namespace {

using singer::Random;

constexpr std::array<int, 12> kScale{0, 2, 3, 5, 7, 8, 10, 12, 14, 15, 17, 19}; // minor, an octave and a half
constexpr double kBeat = 0.5;                                                   // seconds

int one_of(Random& random, int n) {
    return static_cast<int>(random.uniform() * n);
}

ScorePhrase random_phrase(Random& random, int& degree, int& id) {
    constexpr std::array<double, 5> kLengths{0.5, 0.5, 1, 1, 1.5};
    ScorePhrase phrase;
    const int count = 5 + one_of(random, 4);
    double at = 0;
    for (int k = 0; k < count; ++k) {
        int step = 1 + (random.uniform() < 0.3 ? one_of(random, 3) : 0);
        if (random.uniform() < 0.5) step = -step;
        if (random.uniform() < 0.12) step = 0; // the same pitch again
        degree = degree + step < 0 || degree + step > 11 ? degree - step : degree + step;
        const double beats =
            k + 1 == count ? 2 + one_of(random, 3) : kLengths[static_cast<std::size_t>(one_of(random, 5))];
        phrase.notes.push_back({id++, at, beats, 52 + kScale[static_cast<std::size_t>(degree)]});
        at += beats;
    }
    phrase.beats = at + 1 + one_of(random, 2);
    return phrase;
}

/// Writes what is sung: curve, marks and truth.
class Writer {
  public:
    Writer(const Manner& manner, Random random) : manner_(manner), random_(random) {
        out.side.tuning = frequency_of(MidiPitch(69 + manner.tuning.value() / 100));
    }

    void note(int id, Span span, double pitch) {
        PlacedNote placed{id, span, -1};
        if (random_.uniform() >= manner_.missed) {
            if (random_.uniform() < manner_.octave_slips) pitch += random_.uniform() < 0.5 ? 12 : -12;
            placed.heard = static_cast<int>(out.side.notes.size());
            marks::Note mark;
            mark.span = {about(span.start), about(span.end)};
            mark.pitch = MidiPitch(pitch + 0.08 * random_.bell());
            mark.confidence = {0.9};
            out.side.notes.push_back(mark);
            sing(span, mark.pitch.value());
        }
        out.notes.push_back(placed);
    }

    void phrase(Span span) { out.side.phrases.push_back({span, {0.9}, ""}); }

    /// Gliding bits of voice, some taken for notes.
    void talk(Span span) {
        Seconds t = span.start;
        while (t + Seconds(0.4) < span.end) {
            const Span bit{t, t + Seconds(0.1 + 0.25 * random_.uniform())};
            const double from = 45 + 6 * random_.bell();
            sing(bit, from, 4 * random_.bell());
            if (random_.uniform() < 0.3) {
                marks::Note mark;
                mark.span = bit;
                mark.pitch = MidiPitch(from);
                out.side.notes.push_back(mark);
            }
            t = bit.end + Seconds(0.05 + 0.3 * random_.uniform());
        }
    }

    Performed out;

  private:
    Seconds about(Seconds t) { return t + manner_.unsure * random_.bell(); }

    void sing(Span span, double pitch, double glide = 0) {
        const double vibrato = span.length() > Seconds(0.7) ? 0.5 : 0;
        for (auto f = nearest_frame(span.start).value; f < nearest_frame(span.end).value; ++f) {
            while (static_cast<std::int64_t>(out.side.f0.size()) <= f)
                out.side.f0.push(std::nullopt);
            const double since = (time_of({f}) - span.start).value();
            const double p = pitch + vibrato * std::sin(34.5 * since) + 0.25 * random_.bell() +
                             glide * since / span.length().value();
            out.side.f0.set(static_cast<std::size_t>(f), frequency_of(MidiPitch(p)));
        }
    }

    const Manner& manner_;
    Random random_;
};

} // namespace

Score random_score(std::uint64_t seed, int sections) {
    Random random(seed * 7'919 + 13);
    Score score;
    int degree = 5, id = 0;
    for (int s = 0; s < sections; ++s) {
        score.sections.emplace_back();
        for (int p = 0; p < 4; ++p)
            score.sections.back().push_back(random_phrase(random, degree, id));
    }
    return score;
}

Performed perform(const Score& score, const Manner& manner) {
    Random random(manner.seed * 104'729 + 7);
    Writer writer(manner, random.fork());
    std::vector<int> order = manner.sections;
    for (std::size_t s = 0; manner.sections.empty() && s < score.sections.size(); ++s)
        order.push_back(static_cast<int>(s));
    const double key = manner.semitones + manner.tuning.value() / 100;
    Seconds t = manner.talk;
    writer.out.talk = {Seconds(0), t};
    if (t > Seconds(0)) writer.talk(writer.out.talk);
    t += manner.silence;
    for (std::size_t s = 0; s < order.size(); ++s) {
        if (s == 2) t += manner.interlude;
        const Seconds section = t;
        for (const ScorePhrase& phrase : score.sections[static_cast<std::size_t>(order[s])]) {
            const double tempo = manner.speed * std::exp(manner.rubato * random.bell());
            const double swing = manner.rubato * random.bell();
            // Beats to seconds: slower or faster towards the end of the phrase, on top of its own tempo.
            const auto time_at = [&](double beat) {
                const double part = beat / phrase.beats;
                return t + Seconds(kBeat / tempo * phrase.beats * (part + swing * 0.5 * part * (part - 1)));
            };
            Span whole{time_at(0), time_at(0)};
            for (const ScoreNote& n : phrase.notes) {
                const Span span{time_at(n.at),
                                time_at(n.at + n.beats * (&n == &phrase.notes.back() ? 0.9 : 1))};
                const double pitch = n.pitch + key;
                whole.end = span.end;
                if (n.beats >= 1.5 && random.uniform() < manner.ornaments) {
                    const Seconds part = span.length() / 4;
                    writer.note(n.id, {span.start, span.start + part}, pitch);
                    writer.note(-1, {span.start + part, span.start + part * 2}, pitch + 2);
                    writer.note(-1, {span.start + part * 2, span.end}, pitch);
                } else {
                    writer.note(n.id, span, pitch);
                }
            }
            writer.phrase(whole);
            t = time_at(phrase.beats);
        }
        writer.out.sections.push_back({section, t});
    }
    writer.out.side.duration = t + Seconds(0.5);
    while (time_of({static_cast<std::int64_t>(writer.out.side.f0.size())}) < writer.out.side.duration)
        writer.out.side.f0.push(std::nullopt);
    return writer.out;
}

std::vector<PlacedNote> placed(const std::vector<Span>& notes, const std::vector<int>& ids,
                               const Side& side) {
    std::vector<PlacedNote> out;
    for (std::size_t i = 0; i < notes.size(); ++i) {
        PlacedNote note{ids.empty() ? static_cast<int>(i) : ids[i], notes[i], -1};
        double nearest = 0.1;
        for (std::size_t k = 0; k < side.notes.size(); ++k) {
            const double apart = std::abs((side.notes[k].span.start - note.span.start).value());
            if (apart < nearest) nearest = apart, note.heard = static_cast<int>(k);
        }
        out.push_back(note);
    }
    return out;
}

Errors errors_of(const Performed& a, const Performed& b, const Alignment& alignment) {
    Errors out;
    std::map<int, std::vector<const PlacedNote*>> there;
    for (const PlacedNote& n : b.notes)
        if (n.id >= 0) there[n.id].push_back(&n);
    std::vector<double> errors;
    std::map<int, int> id_of_a, id_of_b;
    int both_heard = 0;
    for (const PlacedNote& n : a.notes) {
        if (n.heard >= 0) id_of_a[n.heard] = n.id;
        if (n.id < 0 || !there.contains(n.id)) continue;
        ++out.shared;
        bool heard = false;
        for (const PlacedNote* m : there[n.id])
            heard = heard || m->heard >= 0;
        if (n.heard >= 0 && heard) ++both_heard;
        const auto said = alignment.to_b(n.span.start);
        if (!said) {
            ++out.lost;
            continue;
        }
        double least = 1e9; // of a section sung twice either will do
        for (const PlacedNote* m : there[n.id])
            least = std::min(least, std::abs((*said - m->span.start).value()) * 1000);
        errors.push_back(least);
    }
    out.median_ms = signal::median(std::span<const double>(errors)).value_or(1e9);
    out.p95_ms = signal::quantile(std::span<const double>(errors), 0.95).value_or(1e9);
    out.all_ms = std::move(errors);
    for (const PlacedNote& n : b.notes)
        if (n.heard >= 0) id_of_b[n.heard] = n.id;
    const Counterparts pairs = find_counterparts(a.side, b.side, alignment);
    int right = 0, wrong = 0;
    for (const NotePair& p : pairs.notes) {
        const auto of_a = id_of_a.find(static_cast<int>(p.a)), of_b = id_of_b.find(static_cast<int>(p.b));
        const int x = of_a == id_of_a.end() ? -1 : of_a->second,
                  y = of_b == id_of_b.end() ? -1 : of_b->second;
        if (x >= 0 && x == y)
            ++right;
        else
            ++wrong;
    }
    out.right_pairs = both_heard > 0 ? static_cast<double>(right) / both_heard : 1;
    out.wrong_pairs = right + wrong > 0 ? static_cast<double>(wrong) / (right + wrong) : 0;
    return out;
}

} // namespace luft::compare::test
