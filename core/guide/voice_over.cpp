#include "guide/voice_over.h"

#include "base/error.h"
#include "base/text.h"
#include "guide/fades.h"
#include "signal/stereo.h"

#include <algorithm>
#include <utility>

namespace luft::guide {

Voice::Voice(VoiceFile file, SampleRate rate) : file_(std::move(file)) {
    try {
        sound_ = media::open_sound(open_file(file_.file));
        converter_.emplace(sound_->format().rate, rate);
    } catch (const Error& fault) {
        broken_ = fault.what();
        ended_ = true;
    }
}

/// Reads on; false at the end.
bool Voice::more() {
    if (ended_) return false;
    try {
        if (const auto block = sound_->read()) {
            std::vector<float> stereo;
            signal::Stereo(sound_->format().channels).mix(block->samples, stereo);
            read_ += static_cast<std::int64_t>(stereo.size() / 2);
            converter_->process(stereo, ahead_);
            return true;
        }
        if (file_.length - length() > kVoiceRounding) broken_ = "the rest of it is missing";
    } catch (const Error& fault) {
        broken_ = fault.what();
    }
    converter_->finish(ahead_);
    ended_ = true;
    return true;
}

Seconds Voice::length() const {
    return Seconds(sound_ ? static_cast<double>(read_) / sound_->format().rate.per_second : 0);
}

std::string Voice::fault() const {
    if (broken_.empty()) return {};
    if (read_ == 0) return not_used(file_.file, broken_);
    return sentence(file_.file, "is silent after " + fixed(length().value(), 2) + " s: " + broken_);
}

void Voice::add_to(std::span<float> stereo, std::int64_t position, std::int64_t length, std::int64_t ramp) {
    while (ahead_.size() < stereo.size() && more()) {
    }
    const std::size_t n = std::min(ahead_.size(), stereo.size());
    fade_edges(std::span(ahead_).first(n), position, length, ramp);
    for (std::size_t i = 0; i < n; ++i)
        stereo[i] = std::clamp(stereo[i] + ahead_[i], -1.0F, 1.0F);
    ahead_.erase(ahead_.begin(), ahead_.begin() + static_cast<std::ptrdiff_t>(n));
}

VoiceOver::VoiceOver(const VoiceFiles& files, const script::CueSheet& sheet, const Clock& clock)
    : rate_(clock.sample_rate()), ramp_(clock.samples_in(kCutFade)) {
    const auto place = [&](project::ScriptItemId item, Rational from, Rational to) {
        const auto found = files.used.find(item);
        if (found != files.used.end())
            places_.push_back({clock.sample(from), clock.sample(to), found->second});
    };
    for (const script::Segment& s : sheet.segments)
        if (s.kind == script::SegmentKind::talk && s.item) place(*s.item, s.programme_start, s.programme_end);
    for (const script::AsideCue& a : sheet.asides)
        place(a.item, a.programme_start, a.programme_end);
    std::ranges::stable_sort(places_, {}, &Place::from);
}

void VoiceOver::lay_over(std::span<float> stereo, std::int64_t first) {
    const std::int64_t end = first + static_cast<std::int64_t>(stereo.size() / 2);
    while (next_ < places_.size() && places_[next_].from < end) {
        const Place& place = places_[next_];
        const std::int64_t from = std::max(first, place.from), to = std::min(end, place.to);
        if (!voice_) voice_.emplace(place.file, rate_);
        if (to > from)
            voice_->add_to(stereo.subspan(2 * static_cast<std::size_t>(from - first),
                                          2 * static_cast<std::size_t>(to - from)),
                           from - place.from, place.to - place.from, ramp_);
        if (place.to > end) return; // goes on
        if (const std::string fault = voice_->fault(); !fault.empty()) faults_.push_back(fault);
        voice_.reset();
        ++next_;
    }
}

} // namespace luft::guide
