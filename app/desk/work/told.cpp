#include "desk/work/told.h"

#include "base/text.h"
#include "export/mark_words.h"
#include "profile/statistics.h"
#include "sheet/layout.h"

#include <cmath>

namespace luft::desk {
namespace {

using exports::word;

std::string sure(Confidence confidence) {
    const char* words = confidence.value >= 0.85   ? "quite sure"
                        : confidence.value >= 0.65 ? "fairly sure"
                        : confidence.value >= 0.5  ? "not very sure"
                                                   : "unsure";
    return std::string(words) + " (" + fixed(confidence.value, 2) + ")";
}

std::string cents_text(double cents) {
    const std::string size = fixed(std::abs(cents), 0);
    return (size == "0" ? "" : cents > 0 ? "+" : "−") + size + " cents";
}

std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

std::string written(const profile::Source& source, MidiPitch pitch) {
    return note_name(MidiPitch(pitch.value() - sheet::retuned(source)));
}

void add_note(const marks::Note& note, std::vector<std::string>& out) {
    out.push_back("Held " + fixed(note.span.length().value(), 2) + " s, level " +
                  fixed(note.level.value(), 0) + " dB, " + std::string(word(note.shape)) +
                  (note.dynamic ? ", " + std::string(word(*note.dynamic)) : ""));
    out.push_back("Intonation: " + cents_text(note.cents.value()) + ", drifts " +
                  cents_text(note.drift.value()));
    if (note.scoop) out.push_back("Scooped from " + fixed(note.scoop->value(), 0) + " cents below");
    if (note.vibrato)
        out.push_back("Vibrato: " + fixed(note.vibrato->rate.value(), 1) + " Hz, ±" +
                      fixed(note.vibrato->extent.value(), 0) + " cents, regularity " +
                      fixed(note.vibrato->regularity, 2));
    out.push_back("Onset: " + std::string(word(note.onset.kind)) + ", " + sure(note.onset.confidence));
    out.push_back("End: " + std::string(word(note.offset.kind)) + ", " + sure(note.offset.confidence));
    if (note.sung_in) out.push_back("Register: likely " + std::string(word(*note.sung_in)));
    if (note.vowel)
        out.push_back("Formants: " + fixed(note.vowel->f1.value(), 0) + " and " +
                      fixed(note.vowel->f2.value(), 0) + " Hz" +
                      (note.vowel->nearest.empty() ? "" : ", near [" + note.vowel->nearest + "]"));
}

} // namespace

std::string title_of(const profile::Source& source, const project::Mark& mark) {
    if (const auto* note = std::get_if<marks::Note>(&mark.what))
        return written(source, note->pitch) + " " + cents_text(note->cents.value());
    if (const auto* breath = std::get_if<marks::Breath>(&mark.what))
        return "Breath, " + std::string(word(breath->evidence_kind)) +
               (breath->inside_phrase ? ", while the line goes on" : "");
    if (const auto* change = std::get_if<marks::Switch>(&mark.what))
        return "Switch from " + std::string(word(change->from)) + " to " + std::string(word(change->to));
    return "Phrase of " + fixed(mark.span().length().value(), 1) + " s";
}

std::string state_of(const project::Mark& mark) {
    if (mark.origin == project::Origin::coach) return "Set and kept by you";
    if (mark.state == project::MarkState::proposed) return "Proposed, " + sure(mark.confidence());
    return capital(std::string(word(mark.state)));
}

std::string state_of(const project::Moment& moment) {
    if (moment.origin == project::Origin::coach) return "Made and kept by you";
    if (moment.state == project::MarkState::proposed) return "Proposed, " + sure(moment.confidence);
    return capital(std::string(word(moment.state)));
}

std::vector<std::string> facts_of(const project::Mark& mark) {
    std::vector<std::string> out;
    if (const auto* note = std::get_if<marks::Note>(&mark.what)) {
        add_note(*note, out);
    } else if (const auto* breath = std::get_if<marks::Breath>(&mark.what)) {
        out.push_back("Takes " + fixed(breath->span.length().value(), 2) + " s" +
                      (breath->below_voice
                           ? ", " + fixed(breath->below_voice->value(), 0) + " dB under the voice"
                           : ""));
    } else if (const auto* phrase = std::get_if<marks::Phrase>(&mark.what)) {
        if (phrase->level)
            out.push_back("Level: " + std::string(word(phrase->level->shape)) + ", " +
                          fixed(phrase->level->change.value(), 0) + " dB from start to end");
        if (phrase->dynamic) out.push_back("Sung " + std::string(word(*phrase->dynamic)));
    } else if (const auto* change = std::get_if<marks::Switch>(&mark.what)) {
        out.push_back(change->leap ? "On a leap of pitch" : "Within the line");
    }
    if (!mark.evidence().empty()) out.push_back(capital(mark.evidence()));
    return out;
}

std::vector<std::string> facts_of(const profile::Source& source, Span span) {
    std::vector<double> pitches, levels, cents;
    int vibratos = 0, heard = 0, inferred = 0, switches = 0;
    for (const auto& mark : source.marks) {
        if (!mark.span().overlaps(span) && !span.contains(mark.span().start)) continue;
        if (const auto* note = std::get_if<marks::Note>(&mark.what)) {
            pitches.push_back(note->pitch.value());
            levels.push_back(note->level.value());
            cents.push_back(note->cents.value());
            vibratos += note->vibrato.has_value();
        }
        if (const auto* breath = std::get_if<marks::Breath>(&mark.what))
            ++(breath->evidence_kind == marks::BreathEvidence::heard ? heard : inferred);
        switches += mark.kind() == project::MarkKind::register_switch;
    }
    std::vector<std::string> out;
    if (!pitches.empty()) {
        out.push_back(std::to_string(pitches.size()) + (pitches.size() == 1 ? " note" : " notes") + ", " +
                      written(source, MidiPitch(*std::ranges::min_element(pitches))) + " to " +
                      written(source, MidiPitch(*std::ranges::max_element(pitches))));
        out.push_back("Level " + fixed(*std::ranges::min_element(levels), 0) + " to " +
                      fixed(*std::ranges::max_element(levels), 0) + " dB");
        if (const auto middle = profile::percentile(cents, 0.5))
            out.push_back("Intonation: middle " + cents_text(*middle));
        if (vibratos > 0)
            out.push_back("Vibrato on " + std::to_string(vibratos) + (vibratos == 1 ? " note" : " notes"));
    }
    if (heard + inferred > 0)
        out.push_back("Breaths: " + std::to_string(heard) + " heard, " + std::to_string(inferred) +
                      " inferred");
    if (switches > 0)
        out.push_back(std::to_string(switches) + (switches == 1 ? " register switch" : " register switches"));
    return out;
}

std::string told(const std::vector<project::Performance>& performances, const project::Quote& beside) {
    const auto it = std::ranges::find(performances, beside.performance, &project::Performance::id);
    return (it == performances.end() ? "another performance" : it->label) + ", " +
           clock_text(beside.span.start) + " to " + clock_text(beside.span.end);
}

std::string told(const profile::Source& source, const project::Mark& mark) {
    std::string text =
        title_of(source, mark) + " at " + clock_text(mark.span().start) + "\n" + state_of(mark);
    if (!mark.evidence().empty()) text += "\n" + capital(mark.evidence());
    return text;
}

std::string told(const profile::Source& source, const project::Moment& moment) {
    const auto words = sheet::card_words(moment, source.vocabulary);
    std::string text = words.title + "\n" + clock_text(moment.span.start) + " to " +
                       clock_text(moment.span.end) + "\n" + state_of(moment);
    if (!words.remark.empty()) text += "\n" + words.remark;
    return text;
}

} // namespace luft::desk
