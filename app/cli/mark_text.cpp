#include "cli/mark_text.h"

#include "base/text.h"
#include "export/mark_words.h"

#include <cmath>

namespace luft::cli {
namespace {

using exports::word;

std::string signed_cents(Cents cents) {
    const std::string text = fixed(std::abs(cents.value()), 0);
    if (text == "0") return "in tune";
    return (cents.value() < 0 ? "-" : "+") + text + " cents";
}

std::string words_of(const marks::Note& note) {
    std::string text = note_name(note.pitch) + " " + signed_cents(note.cents) + ", " +
                       std::string(word(note.onset.kind)) + " onset, " + std::string(word(note.offset.kind)) +
                       " offset";
    if (note.sung_in) text += ", " + std::string(word(*note.sung_in));
    if (note.vibrato)
        text += ", vibrato " + fixed(note.vibrato->rate.value(), 1) + " Hz +-" +
                fixed(note.vibrato->extent.value(), 0) + " cents";
    if (note.dynamic) text += ", " + std::string(word(*note.dynamic));
    return text;
}

std::string words_of(const marks::Breath& breath) {
    return std::string(word(breath.evidence_kind)) + (breath.inside_phrase ? ", inside a phrase" : "");
}

std::string words_of(const marks::Phrase& phrase) {
    std::string text = fixed(phrase.span.length().value(), 1) + " s long";
    if (phrase.dynamic) text += ", " + std::string(word(*phrase.dynamic));
    if (!phrase.level) return text;
    text += ", level " + std::string(word(phrase.level->shape));
    const bool swells = phrase.level->shape == marks::LevelShape::swelling;
    const double size = std::abs((swells ? phrase.level->rise : phrase.level->change).value());
    return size >= 1 ? text + " (" + fixed(size, 0) + " dB)" : text;
}

std::string words_of(const marks::Switch& change) {
    return std::string(word(change.from)) + " to " + std::string(word(change.to)) +
           (change.leap ? ", on a leap" : "");
}

} // namespace

std::string mark_text(const project::Mark& mark) {
    return std::visit([](const auto& what) { return words_of(what); }, mark.what);
}

std::string mark_name(const project::Mark& mark) {
    return std::string(word(mark.kind())) + " " + std::to_string(mark.id.value) + " at " +
           clock_text(mark.span().start);
}

} // namespace luft::cli
