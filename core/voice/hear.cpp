#include "voice/hear.h"

#include "base/error.h"
#include "voice/first_pass.h"
#include "voice/second_pass.h"
#include "voice/setting.h"
#include "voice/tails.h"
#include "voice/voicing.h"

namespace luft::voice {

Hearing hear(SampleSource& source, std::optional<Setting> setting, const Progress& progress) {
    constexpr double kFirst = 0.6, kVoicing = 0.62, kTracked = 0.63; // of the work, roughly
    FirstPass pass = first_pass(source, progress.part(0, kFirst));
    const std::size_t n = pass.periodic.frames();
    if (n == 0) throw Error(Fault::unreadable, "There is no sound in the recording.");
    if (!setting) {
        std::vector<float> levels(n);
        for (std::size_t i = 0; i < n; ++i)
            levels[i] = static_cast<float>(pass.texture.level_at(i).value());
        setting =
            find_setting(weigh_setting(levels, pass.aperiodicity, pass.side_ratio, pass.texture.tonality()));
    }
    Hearing hearing;
    hearing.duration = pass.duration;
    hearing.setting = *setting;
    hearing.loudness = pass.loudness;
    Voicing voicing = find_voicing(pass, *setting, progress.part(kFirst, kVoicing));
    hearing.curves.f0 =
        track_pitch(voicing.lattice, *setting == Setting::alone ? costs_alone() : costs_accompanied(),
                    progress.part(kVoicing, kTracked));
    if (*setting == Setting::alone) cut_tails(hearing.curves.f0, pass.texture);
    hearing.curves.voicing = std::move(voicing.probability);
    hearing.curves.loudness = std::move(pass.momentary);
    hearing.texture = std::move(pass.texture);
    second_pass(source, *setting, hearing.texture, hearing.curves, hearing.source,
                progress.part(kTracked, 1));
    hearing.curves.head_register = Curve<Share>(n);
    return hearing;
}

} // namespace luft::voice
