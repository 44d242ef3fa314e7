#include "guide/guide.h"

#include "base/text.h"
#include "export/chapters.h"
#include "export/edit.h"
#include "guide/clock.h"
#include "guide/labels.h"
#include "guide/other_reel.h"
#include "guide/output.h"
#include "guide/scenery.h"
#include "guide/segment_sound.h"
#include "guide/voice_files.h"
#include "guide/voice_over.h"
#include "media/media.h"
#include "tape/stereo_tape.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace luft::guide {
namespace {

constexpr int kLongSide = 1280, kShortSide = 720; ///< at most, unless asked for more
constexpr int kSoundKbps = 192;                   ///< music that a voice is judged by; common practice

struct Size {
    int width = kLongSide, height = kShortSide;
};

Size size_of(const Options& options, const std::optional<media::VideoFacts>& video) {
    if (options.width != 0 || options.height != 0) return {options.width, options.height};
    if (!video) return {};
    const double longer = std::max(video->width, video->height),
                 shorter = std::min(video->width, video->height);
    const double zoom = std::min({1.0, kLongSide / longer, kShortSide / shorter});
    const auto even = [&](int length) {
        return std::max(2 * static_cast<int>(std::lround(length * zoom / 2)), 2);
    };
    return {even(video->width), even(video->height)};
}

std::vector<media::MovieChapter> chapters_of(const Material& m) {
    std::vector<media::MovieChapter> out;
    for (const exports::Chapter& c : exports::chapters(m.source, m.sheet)) {
        if (!out.empty()) out.back().end = c.start;
        out.push_back({c.start, m.sheet.running_time, c.title});
    }
    return out;
}

const Quoted& quoted_of(const Material& m, project::PerformanceId performance) {
    const auto found = std::ranges::find(m.quoted, performance, &Quoted::performance);
    if (found == m.quoted.end())
        throw Error(Fault::bad_request, "The programme quotes a recording that isn't at hand.");
    return *found;
}

/// Throws where a quoted recording can't be read: hours of frames aren't written up to it first.
void try_quoted(const Material& m) {
    std::vector<project::PerformanceId> tried;
    for (const script::Segment& s : m.sheet.segments) {
        if (!s.other || std::ranges::find(tried, *s.other) != tried.end()) continue;
        media::open_playable_sound(quoted_of(m, *s.other).open_recording());
        tried.push_back(*s.other);
    }
}

/// One run from the programme's first frame to its last.
class Run {
  public:
    Run(const Material& material, const std::filesystem::path& file, const Options& options)
        : m_(material), options_(options), video_(media::probe(m_.open_recording()).video),
          size_(size_of(options, video_)),
          scenery_(video_ ? video_scenery(m_.open_recording(), size_.width, size_.height)
                          : sheet_scenery(m_.song, size_.width, size_.height)),
          tape_(media::open_playable_sound(m_.open_recording())), clock_(m_.sheet.frame_rate, tape_.rate()),
          edit_(m_.source, m_.sheet), labels_(m_.sheet, size_.width, size_.height),
          voices_(find_voices(m_.voices, m_.source, m_.sheet)), voice_over_(voices_, m_.sheet, clock_),
          output_(file, format(file), tape_.rate()) {}

    Report run(const Progress& progress) {
        for (const script::Segment& segment : m_.sheet.segments)
            write(segment, progress);
        output_.finish();
        Report report{m_.sheet.running_time, size_.width, size_.height, output_.codecs(), voices_.not_used};
        std::ranges::copy(voice_over_.faults(), std::back_inserter(report.not_used));
        return report;
    }

  private:
    [[nodiscard]] media::MovieFormat format(const std::filesystem::path& file) const {
        media::MovieFormat f;
        f.width = size_.width;
        f.height = size_.height;
        f.frame_rate = m_.sheet.frame_rate;
        f.sample_rate = media::movie_rate(file, tape_.rate());
        f.audio_kbps = kSoundKbps;
        f.reproducible = false; // as many cores as there are
        f.quick = true;
        f.colours = scenery_->colours();
        f.chapters = chapters_of(m_);
        return f;
    }

    /// One other recording is open at a time, from its first quote until another one is quoted.
    OtherReel& reel(project::PerformanceId performance) {
        if (other_ && other_->performance() == performance) return *other_;
        other_.reset();
        return other_.emplace(quoted_of(m_, performance), size_.width, size_.height, scenery_->colours());
    }

    void write(const script::Segment& segment, const Progress& progress) {
        const exports::Cut cut = edit_.cut(segment);
        OtherReel* other = segment.other ? &reel(*segment.other) : nullptr;
        Scenery& scenery = other ? other->scenery() : *scenery_;
        SegmentSound sound(other ? other->tape() : tape_, m_.sheet, segment, clock_);
        const bool stands = segment.kind == script::SegmentKind::talk;
        std::optional<media::MoviePicture> standing;
        for (std::int64_t frame = cut.record_in; frame < cut.record_out; ++frame) {
            const Rational now = Rational(frame) / clock_.frame_rate();
            progress.step((now / m_.sheet.running_time).as_double(), "writing " + clock_text(seconds(now)));
            if (!standing || !stands) standing = picture(scenery, segment, cut, frame);
            media::MoviePicture shown = *standing;
            if (options_.timecode) labels_.write_timecode(shown, frame);
            const std::int64_t first = clock_.sample_of_frame(frame);
            std::vector<float> stereo(2 *
                                      static_cast<std::size_t>(clock_.sample_of_frame(frame + 1) - first));
            sound.next(stereo);
            voice_over_.lay_over(stereo, first);
            output_.frame(std::move(shown), std::move(stereo));
        }
    }

    /// What is on the recording's screen in the middle of the frame's time.
    media::MoviePicture picture(Scenery& scenery, const script::Segment& segment, const exports::Cut& cut,
                                std::int64_t frame) {
        const Rational half(1, 2);
        if (segment.kind == script::SegmentKind::talk) {
            auto still = scenery.at((Rational(cut.source_in) + half) / clock_.frame_rate());
            if (options_.slate) labels_.lay_slate(still, segment);
            return still;
        }
        const Rational middle =
            Rational(cut.source_in) + (Rational(frame - cut.record_in) + half) * segment.speed;
        // A replay's last frame may be filled in part only: it shows what it would if it ended with the span.
        const Rational last = Rational(cut.source_out) - half * segment.speed;
        auto moving = scenery.at(std::min(middle, last) / clock_.frame_rate());
        if (options_.slate && segment.other) labels_.lay_slate(moving, segment);
        return moving;
    }

    const Material& m_;
    Options options_;
    std::optional<media::VideoFacts> video_;
    Size size_;
    std::unique_ptr<Scenery> scenery_;
    tape::StereoTape tape_;
    std::optional<OtherReel> other_;
    Clock clock_;
    exports::Edit edit_;
    Labels labels_;
    VoiceFiles voices_;
    VoiceOver voice_over_;
    Output output_;
};

} // namespace

Report write_guide(const Material& material, const std::filesystem::path& file, const Options& options,
                   const Progress& progress) {
    if (material.sheet.running_time <= Rational(0))
        throw Error(Fault::bad_request, "The programme is empty: there is nothing to make a guide movie of.");
    if (options.width % 2 != 0 || options.height % 2 != 0 || (options.width == 0) != (options.height == 0))
        throw Error(Fault::bad_request, "A guide movie's width and height must be even numbers.");
    try_quoted(material);
    return Run(material, file, options).run(progress);
}

} // namespace luft::guide
