#include "marks/listen.h"

#include "marks/breaths.h"
#include "marks/dynamics.h"
#include "marks/instruments.h"
#include "marks/notes.h"
#include "marks/phrase_levels.h"
#include "marks/phrases.h"
#include "marks/registers.h"
#include "marks/segments.h"
#include "marks/switches.h"
#include "marks/trust.h"
#include "marks/tuning.h"
#include "marks/vowels.h"
#include "voice/hear.h"

namespace luft::marks {
namespace {

std::optional<voice::Setting> setting_asked_for(Accompaniment a) {
    switch (a) {
    case Accompaniment::alone:
        return voice::Setting::alone;
    case Accompaniment::accompanied:
        return voice::Setting::accompanied;
    case Accompaniment::find_out:
        break;
    }
    return std::nullopt;
}

} // namespace

Analysis listen(SampleSource& source, const ListenOptions& options, const Progress& progress) {
    voice::Hearing hearing =
        voice::hear(source, setting_asked_for(options.accompaniment), progress.part(0, 0.97));
    const auto finding = [&](double done) { progress.step(done, "finding notes, breaths and phrases"); };
    finding(0.97);

    std::vector<Run> runs = sung_runs(hearing);
    const std::vector<float> pitch = pitch_line(hearing, runs);
    const std::vector<Run> cut = leave_out_instruments(hearing, pitch, cut_notes(hearing, runs, pitch));
    if (hearing.setting == voice::Setting::accompanied) {
        runs = runs_of(cut);
        keep_only(hearing.curves, cut);
        withhold_unsteady_vowels(hearing.curves, cut);
    }
    finding(0.975);
    std::vector<HeldPitch> held;
    for (const Run& note : cut)
        held.push_back({steady_pitch(pitch, note), kHop * static_cast<double>(note.length())});

    Analysis a;
    a.tuning = find_tuning(held);
    a.notes = measure_notes(hearing, cut, pitch, a.tuning);
    finding(0.98);
    a.breaths = find_breaths(hearing, runs);
    a.phrases = find_phrases(a.notes, a.breaths);
    finding(0.985);
    a.one_register = !find_registers(hearing, a.notes);
    if (!a.one_register) a.switches = find_switches(hearing.curves, a.notes, a.phrases, hearing.setting);
    if (hearing.setting == voice::Setting::accompanied && too_many(a.switches, a.notes)) {
        a.switches.clear();
        forget_registers(hearing.curves, a.notes);
        a.one_register = true;
    }
    finding(0.99);
    measure_phrase_levels(a.phrases, a.notes, hearing.curves.level, hearing.setting);
    mark_dynamics(a.notes, a.phrases, hearing.setting);
    a.duration = hearing.duration;
    a.setting = hearing.setting;
    set_confidence_right(a);
    a.loudness = hearing.loudness;
    a.curves = std::move(hearing.curves);
    progress.step(1, "done");
    return a;
}

} // namespace luft::marks
