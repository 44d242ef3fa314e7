// A project with two performances of one song, open in a session.
#pragma once

#include "desk/work/versions.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <cmath>

namespace luft::desk {

/// Four lines of six notes each, as an ear would have heard them. B sings faster and higher, begins later,
/// and breathes in the middle of the second line, where A sings on. The recordings are files of a few bytes.
struct Two {
    luft::test::Folder folder;
    Session session;
    project::PerformanceId a, b;

    static constexpr double kSpeed = 1.2;
    static constexpr int kHigher = 3;
    static Seconds on_b(double t) { return Seconds(1 + t / kSpeed); }

    Two() {
        session.create(folder / "song.luft", {"Ferry Song", {}, {}, {}, {}});
        a = add("A", false);
        b = add("B", true);
        session.reload();
    }
    [[nodiscard]] std::filesystem::path file() const { return folder / "song.luft"; }

    /// Another performance, as A sings or as B does, with any bytes for its recording.
    project::PerformanceId add(const std::string& label, bool moved, const std::string& bytes = {}) {
        luft::test::write_all(folder / (label + ".wav"),
                              bytes.empty() ? "no sound, only bytes of " + label : bytes);
        project::Performance details;
        details.label = label;
        details.facts.duration = Seconds(40);
        const auto id = session.edit([&](project::Project& p) {
            return p.add_performance(folder / (label + ".wav"), false, details);
        });
        session.edit([&](project::Project& p) { p.store_listening(id, heard(moved)); });
        return id;
    }

    static marks::Analysis heard(bool moved) {
        constexpr int kLines[4][6] = {
            {0, 2, 4, 7, 5, 4}, {9, 7, 5, 4, 2, 0}, {4, 5, 7, 11, 9, 7}, {7, 4, 5, 2, 4, 0}};
        const auto at = [&](double t) { return moved ? on_b(t) : Seconds(t); };
        marks::Analysis out;
        out.duration = Seconds(40);
        out.tuning = Hertz(440);
        voice::Curves& c = out.curves;
        c.f0 = Curve<Hertz>(4000);
        for (auto* curve : {&c.level, &c.cpp, &c.hnr, &c.h1h2, &c.ring, &c.alpha})
            *curve = Curve<Decibels>(4000);
        for (auto* curve : {&c.centroid, &c.f1, &c.f2, &c.f3})
            *curve = Curve<Hertz>(4000);
        c.voicing = Curve<Share>(4000);
        c.loudness = Curve<Lufs>(4000);
        c.head_register = Curve<Share>(4000);
        for (int line = 0; line < 4; ++line) {
            const double start = 2 + line * 7.0;
            const bool broken = moved && line == 1;
            for (int n = 0; n < 6; ++n) {
                marks::Note note;
                note.span = {at(start + n), at(start + n + (broken && n == 2 ? 0.4 : 0.95))};
                note.pitch = MidiPitch(60 + kLines[line][n] + (moved ? kHigher : 0));
                note.level = Decibels(-20);
                note.confidence = {0.95};
                for (auto f = nearest_frame(note.span.start).value; f < nearest_frame(note.span.end).value;
                     ++f)
                    c.f0.set(static_cast<std::size_t>(f), frequency_of(note.pitch));
                out.notes.push_back(note);
            }
            const auto phrase = [&](double from, double to) {
                marks::Phrase p;
                p.span = {at(from), at(to)};
                p.confidence = {0.95};
                out.phrases.push_back(p);
            };
            if (broken) {
                phrase(start, start + 2.4);
                phrase(start + 3, start + 5.95);
                marks::Breath breath;
                breath.span = {at(start + 2.5), at(start + 2.95)};
                breath.evidence_kind = marks::BreathEvidence::heard;
                breath.inside_phrase = true;
                breath.confidence = {0.95};
                out.breaths.push_back(breath);
            } else {
                phrase(start, start + 5.95);
            }
        }
        return out;
    }
};

/// Does what is wanted now, and hands it over.
inline bool do_wanted(Versions& versions, Session& session) {
    const auto task = versions.wanted();
    if (!task) return false;
    versions.take(match(session.project(), task->a, task->b, {}, task->before.get()));
    return true;
}

} // namespace luft::desk
