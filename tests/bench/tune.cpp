#include "bench/tune.h"

#include "bench/songs.h"
#include "singer/layout.h"

#include <cmath>

namespace luft::bench {
namespace {

int fold(int key, int lowest, int highest) {
    while (key < lowest)
        key += 12;
    while (key > highest)
        key -= 12;
    return std::max(key, lowest);
}

} // namespace

Tune tune_for(std::uint64_t seed, int lowest, int highest) {
    const InventedSong song = invent(seed, Form::plain);
    const singer::Layout layout = singer::lay_out(song.song);
    Tune out;
    Seconds later{0}; // what the rests have been lengthened by
    std::size_t phrase = 0;
    Seconds end{-1};
    for (const singer::PlacedNote& n : layout.notes) {
        if (out.phrases.empty() || n.phrase != phrase) {
            if (end > Seconds(0)) later += std::max(Seconds(0), Seconds(0.4) - (n.whole.start - end));
            out.phrases.push_back({n.whole.start + later, n.whole.end + later});
            phrase = n.phrase;
        }
        // A catch breath's gap is closed: these voices sing on.
        const Seconds start = out.notes.empty() || out.phrases.back().start == n.whole.start + later
                                  ? n.whole.start + later
                                  : out.notes.back().span.end;
        out.notes.push_back({fold(static_cast<int>(std::lround(n.note.pitch.value())), lowest, highest),
                             {start, n.whole.end + later}});
        out.phrases.back().end = out.notes.back().span.end;
        end = n.whole.end;
    }
    return out;
}

Truth truth_of(const Tune& tune, Seconds length, const Following& how) {
    Truth t;
    const auto frames = static_cast<std::size_t>(length / kHop);
    TruePitch pitch{Curve<Hertz>(frames), std::vector<bool>(frames, true)};
    t.notes.emplace(), t.breaths.emplace();
    t.phrases = tune.phrases;
    for (const Span& p : tune.phrases)
        for (std::size_t i = 0; i < frames; ++i) {
            const Seconds at = time_of({static_cast<std::int64_t>(i)});
            if (p.start - how.rings_on <= at && at < p.end + how.rings_on) pitch.known[i] = false;
        }
    for (const TuneNote& n : tune.notes) {
        t.notes->push_back({n.span, MidiPitch(n.key), {}, {}, {}, {}});
        for (std::size_t i = 0; i < frames; ++i) {
            const double u = (time_of({static_cast<std::int64_t>(i)}) - n.span.start) / n.span.length();
            if (u < how.settles || u > how.leaves) continue;
            pitch.known[i] = true;
            pitch.hz.set(i, frequency_of(MidiPitch(n.key)));
        }
    }
    t.pitch = std::move(pitch);
    return t;
}

} // namespace luft::bench
