#include "profile/material.h"

#include "base/text.h"
#include "profile/range.h"
#include "profile/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::profile {
namespace {

/// Share of a note cut off at either end before its colour is taken: starts and ends are other facets'
/// matter.
constexpr double kEdge = 0.15;

template <class U>
std::optional<double> middle_of(const Curve<U>& curve, Span steady) {
    const auto values = curve.within(steady);
    return median(std::vector<double>(values.begin(), values.end()));
}

Colour colour_of(const voice::Curves& c, Span note) {
    const Seconds cut = note.length() * kEdge;
    const Span steady{note.start + cut, note.end - cut};
    return {middle_of(c.cpp, steady),  middle_of(c.hnr, steady),   middle_of(c.h1h2, steady),
            middle_of(c.ring, steady), middle_of(c.alpha, steady), middle_of(c.centroid, steady),
            middle_of(c.f1, steady),   middle_of(c.f2, steady),    middle_of(c.f3, steady)};
}

template <class Kind>
Seconds start_of(const Kind& kind) {
    if constexpr (requires { kind.span; })
        return kind.span.start;
    else
        return kind.time;
}

/// The marks of one kind that count, in order of time.
template <class Kind>
std::vector<const Kind*> counting(const Source& source, int& left_out) {
    std::vector<const Kind*> out;
    for (const auto& mark : source.marks) {
        const auto* kind = std::get_if<Kind>(&mark.what);
        if (!kind || mark.state == project::MarkState::dropped) continue;
        if (mark.state == project::MarkState::proposed && kind->confidence < kLeastConfidence)
            ++left_out;
        else
            out.push_back(kind);
    }
    std::ranges::stable_sort(out, [](const Kind* a, const Kind* b) { return start_of(*a) < start_of(*b); });
    return out;
}

void place_in_phrases(Material& m) {
    std::size_t p = 0;
    for (std::size_t i = 0; i < m.notes.size(); ++i) {
        auto& note = m.notes[i];
        while (p < m.phrases.size() && m.phrases[p]->span.end <= note.span().middle())
            ++p;
        if (p < m.phrases.size() && m.phrases[p]->span.contains(note.span().middle()))
            note.phrase = static_cast<int>(p);
        if (i > 0) {
            auto& before = m.notes[i - 1];
            before.joined_after = note.joined_before = note.span().start - before.span().end < kJoined;
            before.last_of_phrase = before.phrase >= 0 && before.phrase != note.phrase;
        }
    }
    if (!m.notes.empty()) m.notes.back().last_of_phrase = m.notes.back().phrase >= 0;
}

} // namespace

Material::Material(const Source& from) : source(from) {
    breaths = counting<marks::Breath>(source, left_out);
    phrases = counting<marks::Phrase>(source, left_out);
    switches = counting<marks::Switch>(source, left_out);
    const Hertz tuning = source.listening ? source.listening->tuning : Hertz(440);
    const double retuned = tuning.value() > 0 ? 12 * std::log2(tuning / Hertz(440)) : 0;
    for (const auto* note : counting<marks::Note>(source, left_out)) {
        if (!std::isfinite(note->pitch.value()) || note->span.length() <= Seconds(0)) continue;
        SungNote sung_note;
        sung_note.note = note;
        sung_note.written = MidiPitch(note->pitch.value() - retuned);
        sung_note.colour = colour_of(source.curves, note->span);
        sung += note->span.length();
        notes.push_back(sung_note);
    }
    accompanied = source.listening && source.listening->setting == voice::Setting::accompanied;
    duration = source.listening ? source.listening->duration : source.performance.facts.duration;

    Span song{Seconds(0), duration};
    if (!notes.empty()) {
        song = {notes.front().span().start, notes.front().span().end};
        for (const auto& note : notes)
            song.end = std::max(song.end, note.span().end);
    }
    for (std::size_t q = 0; q < quarters.size(); ++q)
        quarters[q] = song.start + song.length() * (static_cast<double>(q) / 4);

    range = range_of(notes);
    for (auto& note : notes) {
        note.third = third_of(note.written);
        note.quarter = quarter_of(note.span().middle());
    }
    place_in_phrases(*this);
}

int Material::quarter_of(Seconds t) const {
    return t < quarters[1] ? 0 : t < quarters[2] ? 1 : t < quarters[3] ? 2 : 3;
}

int Material::third_of(MidiPitch written) const {
    if (!range || !range->divided) return 1;
    return written < range->thirds[0] ? 0 : written < range->thirds[1] ? 1 : 2;
}

const SungNote* Material::note_near(Seconds t) const {
    if (notes.empty()) return nullptr;
    auto after = std::ranges::lower_bound(notes, t, {}, [](const SungNote& n) { return n.span().start; });
    if (after == notes.begin()) return &*after;
    const auto before = std::prev(after);
    if (after == notes.end() || t - before->span().end <= after->span().start - t) return &*before;
    return &*after;
}

int Material::third_at(Span span) const {
    std::array<double, 3> time{};
    auto note =
        std::ranges::lower_bound(notes, span.start, {}, [](const SungNote& n) { return n.span().end; });
    for (; note != notes.end() && note->span().start < span.end; ++note)
        time[static_cast<std::size_t>(note->third)] +=
            (std::min(note->span().end, span.end) - std::max(note->span().start, span.start)).value();
    const auto most = std::ranges::max_element(time);
    if (*most > 0) return static_cast<int>(most - time.begin());
    const auto* nearest = note_near(span.middle());
    return nearest ? nearest->third : 1;
}

std::string Material::name(const SungNote& note) {
    return note_name(note.written);
}

} // namespace luft::profile
