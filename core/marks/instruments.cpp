#include "marks/instruments.h"

#include "marks/notes.h"
#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

constexpr double kFarUnderVoice = 12;    // dB
constexpr double kUnderVoice = 6;        // dB; with a stretch that stands alone and is short
constexpr std::size_t kShortGroup = 100; // frames
constexpr std::size_t kRest = 30;        // frames; stretches further apart than this stand alone
constexpr double kFarOffPitch = 12.5;    // semitones
constexpr std::size_t kShort = 40;       // frames
constexpr std::size_t kAround = 500;     // frames to either side

std::span<const float> part(std::span<const float> curve, const Run& note) {
    return curve.subspan(note.begin, note.length());
}

/// Notes with less than a rest between them, together.
std::vector<Run> groups_of(const std::vector<Run>& notes) {
    std::vector<Run> groups;
    for (const Run& n : notes) {
        if (!groups.empty() && n.begin < groups.back().end + kRest)
            groups.back().end = n.end;
        else
            groups.push_back(n);
    }
    return groups;
}

} // namespace

std::vector<Run> leave_out_instruments(const voice::Hearing& hearing, const std::vector<float>& pitch,
                                       std::vector<Run> notes) {
    if (hearing.setting == voice::Setting::alone || notes.empty()) return notes;
    const auto level = hearing.curves.level.raw();
    std::vector<float> sung;
    for (const Run& n : notes) {
        const auto here = part(level, n);
        sung.insert(sung.end(), here.begin(), here.end());
    }
    const double usual_level = signal::quantile(sung, 0.75).value_or(-100);
    const auto under_voice = [&](const Run& n) {
        return usual_level - signal::median(part(level, n)).value_or(-200);
    };
    std::erase_if(notes, [&](const Run& n) { return under_voice(n) > kFarUnderVoice; });
    const std::vector<Run> groups = groups_of(notes);
    std::erase_if(notes, [&](const Run& n) {
        const auto group = std::ranges::find_if(groups, [&](const Run& g) { return n.begin < g.end; });
        return group->length() < kShortGroup && under_voice(*group) > kUnderVoice;
    });

    std::vector<float> line(pitch.size(), Curve<Hertz>::kNone); // the pitch of what is left
    for (const Run& n : notes)
        std::ranges::copy(part(pitch, n), line.begin() + static_cast<std::ptrdiff_t>(n.begin));
    std::erase_if(notes, [&](const Run& n) {
        if (n.length() >= kShort) return false;
        const std::size_t from = n.begin > kAround ? n.begin - kAround : 0;
        const std::size_t to = std::min(line.size(), n.end + kAround);
        const auto usual = signal::median(std::span<const float>(line).subspan(from, to - from));
        return usual && std::abs(steady_pitch(pitch, n).value() - *usual) > kFarOffPitch;
    });
    return notes;
}

std::vector<Run> runs_of(const std::vector<Run>& notes) {
    std::vector<Run> runs;
    for (const Run& n : notes) {
        if (!runs.empty() && runs.back().end >= n.begin)
            runs.back().end = n.end;
        else
            runs.push_back(n);
    }
    return runs;
}

void keep_only(voice::Curves& c, const std::vector<Run>& notes) {
    std::size_t next = 0;
    for (std::size_t i = 0; i < c.frames(); ++i) {
        while (next < notes.size() && notes[next].end <= i)
            ++next;
        if (next < notes.size() && notes[next].begin <= i) continue;
        c.f0.set(i, std::nullopt);
        for (auto* curve : {&c.f1, &c.f2, &c.f3, &c.centroid})
            curve->set(i, std::nullopt);
        for (auto* curve : {&c.level, &c.cpp, &c.hnr, &c.h1h2, &c.ring, &c.alpha})
            curve->set(i, std::nullopt);
    }
}

} // namespace luft::marks
