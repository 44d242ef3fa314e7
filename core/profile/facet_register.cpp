// Chest and head register, and how the voice crosses between them.
#include "base/text.h"
#include "profile/crossing.h"
#include "profile/facets.h"
#include "profile/statistics.h"
#include "profile/words.h"

#include <cmath>

namespace luft::profile {
namespace {

void tally_notes(const Material& m, Draft& d) {
    Seconds told;
    int count = 0;
    for (const auto& n : m.notes)
        if (n.note->sung_in) told += n.length(), ++count;
    d.tally.open("register", ShareBy::time, "note", "of singing", count, told, {"chest", "head", "mix"});
    for (const auto& n : m.notes) {
        if (!n.note->sung_in) continue;
        const bool head = *n.note->sung_in == marks::Register::head;
        d.tally.add("register", head ? "head" : "chest", n, n.length().value(),
                    Material::name(n) + ", likely " + (head ? "head" : "chest") + " register");
    }
}

void tally_switches(const Material& m, Draft& d) {
    int told = 0;
    for (const auto* s : m.switches)
        told += crossing_of(m.source.curves, *s) != Crossing::unknown ? 1 : 0;
    d.tally.open("switches", ShareBy::count, "switch", "switches", told, Seconds(0),
                 {"switch-smooth", "switch-break"});
    for (const auto* s : m.switches) {
        const auto crossing = crossing_of(m.source.curves, *s);
        if (crossing == Crossing::unknown) continue;
        const auto* near = m.note_near(s->time);
        const std::string where =
            std::string(s->from == marks::Register::chest ? "chest to head" : "head to chest") +
            (near ? " near " + Material::name(*near) : "") + (s->leap ? ", on a leap" : "");
        d.tally.add("switches", crossing == Crossing::broken ? "switch-break" : "switch-smooth",
                    {s->time, s->time}, s->confidence.value, where);
    }
}

/// Between which notes the voice changes over.
Values switch_pitches(const Material& m) {
    Values out;
    for (const auto* s : m.switches)
        if (const auto* near = m.note_near(s->time))
            out.add(near->written.value(), near->third, m.quarter_of(s->time));
    return out;
}

} // namespace

void registers(const Material& m, Draft& d) {
    tally_notes(m, d);
    tally_switches(m, d);
    const int chest = d.tally.count("chest"), head = d.tally.count("head");
    if (m.source.listening && m.source.listening->one_register && m.switches.empty() && chest + head == 0) {
        if (!m.notes.empty())
            d.say("The sound doesn't split into two registers, so none is named; the ear may hear more.");
        return;
    }
    if (chest + head > 0)
        d.say(counted(chest, "note") + " likely in chest and " + std::to_string(head) +
              " likely in head register, by spectrum, level and pitch together.");
    const auto pitches = switch_pitches(m);
    if (!m.switches.empty()) {
        std::string words = counted(static_cast<int>(m.switches.size()), "switch", "switches");
        if (!pitches.empty()) {
            const MidiPitch low(percentile(pitches.numbers(), 0.1).value_or(0));
            const MidiPitch high(percentile(pitches.numbers(), 0.9).value_or(0));
            words += note_name(low) == note_name(high)
                         ? " near " + note_name(low)
                         : " between " + note_name(low) + " and " + note_name(high);
        }
        const int breaks = d.tally.count("switch-break");
        d.say(words + ", " + (breaks == 0 ? "none" : std::to_string(breaks)) +
              " of them with a hole in the sound.");
    }
    add_measure(d.measures, "switch_pitch_midi", "Pitch of the switches", "MIDI", 0, pitches,
                "The note sung where the register changes.");
    d.good = "switch-smooth";
    d.contrast = "switch-break";

    const int smooth = d.tally.count("switch-smooth"), broken = d.tally.count("switch-break");
    if (smooth >= 3 && smooth >= 0.8 * (smooth + broken))
        d.find(FindingKind::strength, "switch-smooth", static_cast<double>(smooth) / (smooth + broken),
               std::to_string(smooth) + " of " + counted(smooth + broken, "switch", "switches") +
                   " between the registers pass without a hole in the sound.",
               d.tally.best(d.good));
    if (broken > 0)
        d.find(FindingKind::watch, "switch-break", std::min(1.0, 0.4 + 0.15 * broken),
               counted(broken, "switch breaks", "switches break") + " (" +
                   times(d.tally.spans("switch-break")) + "); a yodel may be meant, a hole rarely is.",
               d.tally.best(d.contrast));
}

} // namespace luft::profile
