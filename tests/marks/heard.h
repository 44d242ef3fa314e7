// Singing heard whole: a song, what is true about it and what the ear says.
#pragma once

#include "marks/listen.h"
#include "reference/note_metric.h"
#include "scenes/songs.h"
#include "scenes/tones.h"

namespace luft::marks::test {

inline Analysis listen_to(std::vector<float> samples, SampleRate rate,
                          Accompaniment how = Accompaniment::alone, int channels = 1) {
    singer::MemorySource source(std::move(samples), rate, channels);
    return listen(source, {.accompaniment = how});
}

struct Heard {
    singer::Rendition sung;
    Analysis said;
};

inline Heard hear(const singer::Song& song, const singer::Singer& singer) {
    Heard h{singer::render(song, singer, {44100}), {}};
    h.said = listen_to(h.sung.samples, h.sung.rate);
    return h;
}

inline Heard hear(const scenes::SongPlan& plan) {
    Heard h{scenes::sing(plan), {}};
    h.said = listen_to(h.sung.samples, h.sung.rate);
    return h;
}

/// A phrase of these events, after half a second.
inline Heard hear(const std::vector<singer::Event>& events, const singer::Singer& singer = {}) {
    singer::Phrase line;
    line.events.emplace_back(singer::Rest{Seconds(0.5)});
    for (const singer::Event& e : events)
        line.events.push_back(e);
    singer::Song song;
    song.phrases.push_back(std::move(line));
    return hear(song, singer);
}

inline std::vector<reference::TimedNote> timed(const std::vector<Note>& notes) {
    std::vector<reference::TimedNote> out;
    for (const Note& n : notes)
        out.push_back({n.span.start.value(), n.span.end.value(), frequency_of(n.pitch).value()});
    return out;
}
inline std::vector<reference::TimedNote> timed(const std::vector<singer::TrueNote>& notes) {
    std::vector<reference::TimedNote> out;
    for (const auto& n : notes)
        out.push_back({n.span.start.value(), n.span.end.value(), frequency_of(n.pitch).value()});
    return out;
}

/// Spans that overlap, each used once.
template <class True, class Said>
std::vector<int> match_spans(const std::vector<True>& there, const std::vector<Said>& said) {
    return reference::match(there.size(), said.size(), [&](std::size_t t, std::size_t s) {
        return there[t].span.overlaps(said[s].span);
    });
}

/// The found note that begins nearest to the true one.
inline const Note& note_at(const Analysis& said, const singer::TrueNote& truth) {
    return *std::ranges::min_element(said.notes, {}, [&](const Note& n) {
        return std::abs(n.span.start.value() - truth.span.start.value());
    });
}

} // namespace luft::marks::test
