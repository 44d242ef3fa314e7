#include "media/movie_chapters.h"

namespace luft::media {

void add_chapters(AVFormatContext& output, const std::vector<MovieChapter>& chapters) {
    if (chapters.empty()) return;
    // FFmpeg frees them with the context, and offers nothing to make them with.
    output.chapters = static_cast<AVChapter**>(allocated(av_calloc(chapters.size(), sizeof(AVChapter*))));
    constexpr AVRational kNanosecond{1, 1'000'000'000}; // as fine as Matroska; MP4 has 100 ns
    for (const MovieChapter& chapter : chapters) {
        auto* made = static_cast<AVChapter*>(allocated(av_mallocz(sizeof(AVChapter))));
        output.chapters[output.nb_chapters++] = made;
        const auto time = [&](Rational t) { return (t * Rational(kNanosecond.den)).round(); };
        made->id = output.nb_chapters;
        made->time_base = kNanosecond;
        made->start = time(chapter.start);
        made->end = time(chapter.end);
        av_dict_set(&made->metadata, "title", chapter.title.c_str(), 0);
    }
}

} // namespace luft::media
