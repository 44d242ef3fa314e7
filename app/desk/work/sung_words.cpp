#include "desk/work/sung_words.h"

#include "base/error.h"
#include "project/spread_words.h"
#include "project/sung_lines.h"

#include <algorithm>

namespace luft::desk {
namespace {

bool has_notes(const profile::Source& source) {
    return std::ranges::any_of(
        source.marks, [](const project::Mark& mark) { return mark.kind() == project::MarkKind::note; });
}

} // namespace

void spread_words(Session& session) {
    if (!session.shown() || !has_notes(session.source()))
        throw Error(Fault::bad_request, "There are no notes to spread the words over.",
                    "Bring in a recording and let it be listened to first.");
    if (project::sung_lines(session.source().piece.words).empty())
        throw Error(Fault::bad_request, "The piece has no words yet.",
                    "Type or paste them under 'About this piece', a sung line a line.");
    const auto id = *session.shown();
    session.edit([&](project::Project& project) { project::spread_sung_words(project, id); });
}

void set_piece(Session& session, const project::Piece& piece) {
    const bool other_words = piece.words != session.source().piece.words;
    session.edit([&](project::Project& project) { project.set_piece(piece); });
    if (!other_words || !session.shown()) return;
    const auto id = *session.shown();
    session.edit([&](project::Project& project) { project::spread_sung_words(project, id); });
}

Span room_of_word(const profile::Source& source, project::SungWordId id) {
    const auto& words = source.sung_words;
    const auto word = std::ranges::find(words, id, &project::SungWord::id);
    if (word == words.end()) return {};
    Span room{Seconds(0), std::max(word->at, source.performance.facts.duration)};
    for (auto one = words.begin(); one != words.end(); ++one)
        if (one->placed && one < word)
            room.start = one->at;
        else if (one->placed && one > word)
            return {room.start, one->at};
    return room;
}

void move_word(Session& session, project::SungWordId id, Seconds at) {
    const Span room = room_of_word(session.source(), id);
    const Seconds there = std::clamp(at, room.start, room.end);
    session.edit([&](project::Project& project) { project.move_sung_word(id, there); });
}

} // namespace luft::desk
