#include "bench/truth.h"

namespace luft::bench {
namespace {

TrueNote note_of(const singer::TrueNote& n) {
    TrueNote t{n.span,   n.pitch, n.onset,
               n.offset, {},      TrueVowel{n.formants[0].frequency, n.formants[1].frequency}};
    if (n.vibrato) t.vibrato = marks::Vibrato{n.vibrato->rate, n.vibrato->extent, 1 - n.vibrato->unrest};
    return t;
}

bool inside(const std::vector<Span>& phrases, Seconds t) {
    return std::ranges::any_of(phrases, [t](Span p) { return p.start + Seconds(0.02) < t && t < p.end; });
}

double power_of_steps(std::span<const float> x, Span s, SampleRate rate) {
    const auto at = [&](Seconds t) {
        return std::min(x.size(), static_cast<std::size_t>(std::max(0.0, t.value()) * rate.per_second));
    };
    double sum = 1e-12;
    for (std::size_t i = at(s.start) + 1; i < at(s.end); ++i)
        sum += double(x[i] - x[i - 1]) * (x[i] - x[i - 1]);
    return sum;
}

} // namespace

Truth truth_of(const singer::Truth& sung) {
    Truth t;
    t.pitch = TruePitch{sung.f0, {}};
    t.level = sung.level, t.head = sung.head;
    t.breaths.emplace(), t.phrases.emplace(), t.switches.emplace(), t.notes.emplace();
    t.notes_in_full = true;
    for (const auto& b : sung.breaths)
        t.breaths->push_back({b.span, b.heard, b.inside_phrase, false});
    for (const auto& p : sung.phrases)
        t.phrases->push_back(p.span);
    for (const auto& s : sung.switches)
        t.switches->push_back({s.time, s.from, s.to, !inside(*t.phrases, s.time)});
    for (const auto& n : sung.notes)
        t.notes->push_back(note_of(n));
    t.instrumental = instrumental_stretches(*t.phrases, sung.duration);
    return t;
}

void find_audible(std::vector<TrueBreath>& breaths, std::span<const float> voice, std::span<const float> mix,
                  SampleRate rate) {
    std::vector<float> rest(mix.begin(), mix.end());
    for (std::size_t i = 0; i < std::min(rest.size(), voice.size()); ++i)
        rest[i] -= voice[i];
    for (TrueBreath& b : breaths)
        b.audible =
            b.audible && power_of_steps(voice, b.span, rate) > 0.25 * power_of_steps(rest, b.span, rate);
}

std::vector<Span> instrumental_stretches(const std::vector<Span>& phrases, Seconds length) {
    constexpr Seconds kLeast{3}, kClear{0.5};
    std::vector<Span> out;
    Seconds from{0};
    const auto until = [&](Seconds end) {
        if (end - from >= kLeast) out.push_back({from == Seconds(0) ? from : from + kClear, end - kClear});
    };
    for (const Span& p : phrases) {
        until(p.start);
        from = p.end;
    }
    until(length);
    return out;
}

marks::Analysis answer_of(const Truth& truth, Seconds length) {
    marks::Analysis a;
    a.duration = length;
    if (truth.pitch) a.curves.f0 = truth.pitch->hz;
    if (truth.level) a.curves.level = *truth.level;
    if (truth.head) {
        a.curves.head_register = *truth.head;
        const auto head = truth.head->raw();
        a.one_register = std::ranges::none_of(head, [](float h) { return h >= 0.5F; }) ||
                         std::ranges::none_of(head, [](float h) { return h < 0.5F; });
    }
    for (const TrueBreath& b : truth.breaths.value_or(std::vector<TrueBreath>{}))
        if (!b.doubtful)
            a.breaths.push_back(
                {b.span, marks::BreathEvidence::heard, b.inside_phrase, {}, Confidence{1}, ""});
    for (const Span& p : truth.phrases.value_or(std::vector<Span>{}))
        a.phrases.push_back({p, Confidence{1}, ""});
    for (const TrueSwitch& s : truth.switches.value_or(std::vector<TrueSwitch>{}))
        if (!s.between_phrases) a.switches.push_back({s.time, s.from, s.to, false, Confidence{1}, ""});
    for (const TrueNote& n : truth.notes.value_or(std::vector<TrueNote>{})) {
        marks::Note m;
        m.span = n.span, m.pitch = n.pitch, m.vibrato = n.vibrato, m.confidence = {1};
        m.onset = {n.onset.value_or(marks::OnsetKind::balanced), {1}, ""};
        m.offset = {n.offset.value_or(marks::OffsetKind::clean), {1}, ""};
        if (n.vowel) m.vowel = marks::Vowel{n.vowel->f1, n.vowel->f2, ""};
        a.notes.push_back(std::move(m));
    }
    return a;
}

} // namespace luft::bench
