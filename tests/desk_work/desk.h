// A project with one short performance, open in a session.
#pragma once

#include "desk/work/session.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

namespace luft::desk {

/// Two phrases of four notes each, with a breath before the second: sung from 0.5 s to 2.5 s and from 3.0 s
/// to 5.0 s; every mark proposed. The recording is a file of a few bytes, which nothing here listens to.
struct Desk {
    luft::test::Folder folder;
    Session session;
    std::size_t marks_made = 0;

    Desk() {
        luft::test::write_all(folder / "take.wav", "no sound, only bytes");
        session.create(folder / "song.luft", {"Ferry Song", {}, {}, {}, {}});
        project::Performance details;
        details.label = "A";
        details.facts.duration = Seconds(6);
        details.facts.channels = 1;
        session.edit([&](project::Project& p) { p.add_performance(folder / "take.wav", false, details); });
        marks::Analysis heard;
        heard.duration = Seconds(6);
        heard.tuning = Hertz(440);
        for (const double start : {0.5, 3.0}) {
            marks::Phrase phrase;
            phrase.span = {Seconds(start), Seconds(start + 2)};
            phrase.confidence = {start < 1 ? 0.9 : 0.6};
            heard.phrases.push_back(phrase);
            for (int i = 0; i < 4; ++i) {
                marks::Note note;
                note.span = {Seconds(start + i * 0.5), Seconds(start + i * 0.5 + 0.45)};
                note.pitch = MidiPitch(60 + i);
                note.confidence = {0.8};
                heard.notes.push_back(note);
            }
        }
        marks::Breath breath;
        breath.span = {Seconds(2.6), Seconds(2.9)};
        breath.confidence = {0.7};
        heard.breaths.push_back(breath);
        heard.curves.f0 = Curve<Hertz>(600);
        heard.curves.voicing = Curve<Share>(600);
        heard.curves.loudness = Curve<Lufs>(600);
        for (auto* curve : {&heard.curves.level, &heard.curves.cpp, &heard.curves.hnr, &heard.curves.h1h2,
                            &heard.curves.ring, &heard.curves.alpha})
            *curve = Curve<Decibels>(600);
        for (auto* curve : {&heard.curves.centroid, &heard.curves.f1, &heard.curves.f2, &heard.curves.f3})
            *curve = Curve<Hertz>(600);
        heard.curves.head_register = Curve<Share>(600);
        session.edit([&](project::Project& p) { p.store_listening(*session.shown(), heard); });
        session.reload();
        marks_made = heard.phrases.size() + heard.notes.size() + heard.breaths.size();
    }
    [[nodiscard]] std::filesystem::path file() const { return folder / "song.luft"; }
    /// Cuts a curve short, so that the project can only be read: whoever runs the tests, the superuser too.
    void make_read_only() {
        luft::test::run("sqlite3 " + luft::test::quoted(file()) +
                        " \"UPDATE curve SET samples = x'00ff00' WHERE id = (SELECT min(id) FROM curve)\"");
    }
};

} // namespace luft::desk
