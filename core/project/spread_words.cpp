#include "project/spread_words.h"

#include "project/line_places.h"
#include "project/note_places.h"
#include "project/project.h"

#include <algorithm>
#include <limits>

namespace luft::project {
namespace {

constexpr Seconds kSliver{0.15}; ///< a shorter rest of a note, beside a placed word, is no note of its own
constexpr Seconds kRest{1};      ///< ends a phrase where there are only notes, as on the sheet

struct Sung {
    Span span;
    std::vector<Span> notes;
};

std::vector<Span> spans_of(const std::vector<Mark>& marks, MarkKind kind) {
    std::vector<Span> spans;
    for (const Mark& mark : marks)
        if (mark.kind() == kind && mark.state != MarkState::dropped) spans.push_back(mark.span());
    std::ranges::sort(spans, {}, &Span::start);
    return spans;
}

/// Phrases that have notes, in order.
std::vector<Sung> phrases_of(const std::vector<Mark>& marks) {
    const std::vector<Span> notes = spans_of(marks, MarkKind::note);
    std::vector<Sung> all;
    for (const Span& phrase : spans_of(marks, MarkKind::phrase))
        all.push_back({phrase, {}});
    const bool by_rests = all.empty();
    for (const Span& note : notes) {
        if (!by_rests) break;
        if (all.empty() || note.start - all.back().span.end >= kRest) all.push_back({note, {}});
        all.back().span.end = std::max(all.back().span.end, note.end);
    }
    for (const Span& note : notes) {
        const auto over = std::ranges::find_if(
            all, [&](const Sung& phrase) { return phrase.span.contains(note.middle()); });
        if (over != all.end()) over->notes.push_back(note);
    }
    std::erase_if(all, [](const Sung& phrase) { return phrase.notes.empty(); });
    return all;
}

std::size_t nearest_phrase(const std::vector<Sung>& phrases, Seconds at) {
    const auto off = [&](const Sung& p) {
        return std::max({Seconds(0), p.span.start - at, at - p.span.end});
    };
    return static_cast<std::size_t>(std::ranges::min_element(phrases, {}, off) - phrases.begin());
}

/// The new words with ids and places of those that stood there already.
std::vector<SungWord> found_again(const std::vector<SungLine>& lines, const std::vector<SungWord>& old) {
    std::vector<SungWord> words;
    for (const SungLine& line : lines)
        for (const Syllable& syllable : line) {
            words.emplace_back();
            words.back().text = syllable.text;
            words.back().joins = syllable.joins;
        }
    const auto same = [&](std::size_t i, std::size_t j) {
        return words[i].text == old[j].text && words[i].joins == old[j].joins;
    };
    // What is the same at both ends needs no table; mostly that is all.
    std::size_t first = 0, m = words.size(), n = old.size();
    for (; first < std::min(m, n) && same(first, first); ++first)
        words[first] = old[first];
    for (; std::min(m, n) > first && same(m - 1, n - 1); --m, --n)
        words[m - 1] = old[n - 1];
    std::vector<std::vector<int>> common(m - first + 1, std::vector<int>(n - first + 1, 0));
    const auto run = [&](std::size_t i, std::size_t j) -> int& { return common[i - first][j - first]; };
    for (std::size_t i = m; i-- > first;)
        for (std::size_t j = n; j-- > first;)
            run(i, j) = same(i, j) ? run(i + 1, j + 1) + 1 : std::max(run(i + 1, j), run(i, j + 1));
    for (std::size_t i = first, j = first; i < m && j < n;) {
        if (same(i, j))
            words[i++] = old[j++];
        else
            run(i + 1, j) >= run(i, j + 1) ? ++i : ++j;
    }
    return words;
}

/// The notes of several phrases between two times; what sounds at `from` already begins there.
std::vector<SungNote> notes_between(const std::vector<Sung>& phrases, const LineBlock& block, Seconds from,
                                    Seconds to) {
    std::vector<SungNote> notes;
    for (std::size_t j = block.phrase; j < block.phrase + block.phrases; ++j) {
        bool begins = true;
        for (const Span& note : phrases[j].notes) {
            const Span part{std::max(note.start, from), std::min(note.end, to)};
            const bool whole = part == note && note.length() > Seconds(0);
            if (whole || part.length() >= kSliver)
                notes.push_back({part, begins && part.start == note.start});
            begins = false;
        }
    }
    return notes;
}

/// Syllables of one block and the words they become.
struct Run {
    std::span<const Syllable> syllables;
    std::span<SungWord> words;

    [[nodiscard]] Run part(std::size_t first, std::size_t count) const {
        return {syllables.subspan(first, count), words.subspan(first, count)};
    }
};

void place_evenly(const Run& run, Seconds from, Seconds to) {
    const auto count = static_cast<double>(run.words.size());
    for (std::size_t i = 0; i < run.words.size(); ++i)
        run.words[i].at = from + std::max(Seconds(0), to - from) * (static_cast<double>(i) / count);
}

void place_on_notes(const Run& run, std::vector<SungNote> notes, Seconds from, Seconds to) {
    // A placed word begins its own note, also where the ear found none.
    if (run.words.front().placed && !notes.empty() && notes.front().span.start - from < kSliver)
        notes.front().span.start = from;
    else if (run.words.front().placed)
        notes.insert(notes.begin(), SungNote{{from, notes.empty() ? to : notes.front().span.start}});
    const auto places = places_on_notes(run.syllables, notes);
    if (places.empty()) return place_evenly(run, from, to);
    for (std::size_t i = 0; i < places.size(); ++i)
        if (!run.words[i].placed) run.words[i].at = places[i];
}

void place_block(const Run& run, const std::vector<Sung>& phrases, const LineBlock& block) {
    const Seconds end = phrases[block.phrase + block.phrases - 1].notes.back().end;
    Seconds from = phrases[block.phrase].notes.front().start;
    for (std::size_t first = 0; first < run.words.size();) {
        std::size_t next = first + 1;
        while (next < run.words.size() && !run.words[next].placed)
            ++next;
        if (run.words[first].placed) from = run.words[first].at;
        const Seconds to = next < run.words.size() ? run.words[next].at : std::max(from, end);
        from = std::min(from, to);
        place_on_notes(run.part(first, next - first), notes_between(phrases, block, from, to), from, to);
        first = next;
    }
}

LineSize size_of(const SungLine& line, std::span<const SungWord> words, const std::vector<Sung>& phrases) {
    LineSize size{0, {}, {}};
    for (std::size_t i = 0; i < line.size(); ++i) {
        size.notes += line[i].notes;
        if (!words[i].placed) continue;
        size.last_tied = nearest_phrase(phrases, words[i].at);
        if (!size.first_tied) size.first_tied = size.last_tied;
    }
    return size;
}

/// Placed words hold whatever lies between them, also where blocks don't fit together.
void keep_order(std::vector<SungWord>& words) {
    Seconds least{0};
    for (SungWord& word : words)
        if (word.placed)
            least = word.at;
        else
            least = word.at = std::max(word.at, least);
    Seconds most{std::numeric_limits<double>::max()};
    for (auto word = words.rbegin(); word != words.rend(); ++word)
        most = word->at = std::min(word->at, most);
}

} // namespace

std::vector<SungWord> spread_words(const std::string& text, const std::vector<Mark>& marks,
                                   const std::vector<SungWord>& standing) {
    const std::vector<SungLine> lines = sung_lines(text);
    const std::vector<Sung> phrases = phrases_of(marks);
    std::vector<SungWord> words = found_again(lines, standing);
    if (phrases.empty()) {
        std::erase_if(words, [](const SungWord& word) { return !word.placed; });
        return words;
    }
    std::vector<Syllable> syllables;
    std::vector<std::size_t> begins; ///< of each line among all syllables
    std::vector<LineSize> sizes;
    for (const SungLine& line : lines) {
        begins.push_back(syllables.size());
        sizes.push_back(size_of(line, std::span(words).subspan(begins.back(), line.size()), phrases));
        syllables.insert(syllables.end(), line.begin(), line.end());
    }
    begins.push_back(syllables.size());
    std::vector<int> counts;
    for (const Sung& phrase : phrases)
        counts.push_back(static_cast<int>(phrase.notes.size()));
    for (const LineBlock& block : places_on_phrases(sizes, counts))
        place_block(Run{syllables, words}.part(begins[block.line],
                                               begins[block.line + block.lines] - begins[block.line]),
                    phrases, block);
    keep_order(words);
    return words;
}

std::size_t spread_sung_words(Project& project, PerformanceId id) {
    const std::string text = project.piece().words;
    const std::vector<Mark> marks = project.marks(id);
    const std::vector<SungWord> standing = project.sung_words(id);
    if (phrases_of(marks).empty() || (sung_lines(text).empty() && standing.empty())) return standing.size();
    const std::vector<SungWord> words = spread_words(text, marks, standing);
    project.set_sung_words(id, words);
    return words.size();
}

} // namespace luft::project
