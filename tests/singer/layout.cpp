#include "singer/layout.h"

#include "base/error.h"
#include "singer/noises.h"

#include <algorithm>

namespace luft::singer {
namespace {

/// Whether the voice runs on without a gap into `next`.
bool runs_into(const SungNote& next) {
    return next.start == Start::legato && (next.consonant == Consonant::none || is_voiced(next.consonant));
}

void mark_joins(Layout& out) {
    for (std::size_t i = 1; i < out.notes.size(); ++i) {
        PlacedNote &a = out.notes[i - 1], &b = out.notes[i];
        const bool adjacent = a.phrase == b.phrase && a.whole.end == b.whole.start;
        if (!adjacent || b.note.start != Start::legato) continue;
        b.joined = a.joins = runs_into(b.note);
        a.cut = !a.joins;
    }
}

/// Breaths between two notes of one phrase lie inside it.
void mark_inside(Layout& out) {
    for (PlacedBreath& b : out.breaths) {
        const auto next = std::find_if(out.notes.begin(), out.notes.end(),
                                       [&](const PlacedNote& n) { return n.whole.start >= b.span.end; });
        if (next == out.notes.begin() || next == out.notes.end()) continue;
        b.inside_phrase = std::prev(next)->phrase == next->phrase;
    }
}

} // namespace

Manner manner_of(const SungNote& n, bool joined, bool joins, bool cut) {
    using marks::OffsetKind;
    Manner m;
    const bool hissed = n.consonant != Consonant::none && !is_voiced(n.consonant);
    if (hissed)
        m = {length_of(n.consonant), Seconds(0.045), {}, {}};
    else if (!joined && n.start == Start::glottal)
        m = {Seconds(0.030), Seconds(0.020), {}, {}};
    else if (!joined && n.start == Start::breathy)
        m = {Seconds(0.110), Seconds(0.180), {}, {}};
    else if (!joined)
        m = {Seconds(0), Seconds(0.085), {}, {}};
    if (cut)
        m.fall = Seconds(0.030);
    else if (!joins && n.end == OffsetKind::clean)
        m.fall = Seconds(0.055);
    else if (!joins && n.end == OffsetKind::breathy)
        m.fall = Seconds(0.080), m.after = Seconds(0.140);
    else if (!joins)
        m.fall = std::max(Seconds(0.35), n.length * 0.4);
    const double wanted = (m.before + m.rise + m.fall + m.after).value();
    const double k = std::min(1.0, 0.8 * n.length.value() / std::max(wanted, 1e-9));
    for (Seconds* part : {&m.before, &m.rise, &m.fall, &m.after})
        *part = *part * k;
    return m;
}

Layout lay_out(const Song& song) {
    Layout out;
    Seconds now{0};
    const auto take = [&](Seconds length) {
        if (length < Seconds(0)) throw Error(Fault::bad_request, "A song has an event of negative length.");
        const Span s{now, now + length};
        now = s.end;
        return s;
    };
    for (std::size_t p = 0; p < song.phrases.size(); ++p) {
        for (const Event& e : song.phrases[p].events) {
            if (const auto* n = std::get_if<SungNote>(&e))
                out.notes.push_back({*n, take(n->length), {}, false, false, false, p});
            else if (const auto* b = std::get_if<Breath>(&e))
                out.breaths.push_back({*b, take(b->length), false});
            else
                take(std::get<Rest>(e).length);
        }
        out.words.push_back(song.phrases[p].words);
    }
    mark_joins(out);
    mark_inside(out);
    for (PlacedNote& n : out.notes) {
        const Manner m = manner_of(n.note, n.joined, n.joins, n.cut);
        n.voiced = {n.whole.start + m.before, n.whole.end - m.after};
    }
    out.end = now;
    return out;
}

} // namespace luft::singer
