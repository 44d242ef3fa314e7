// Any text as the words of a piece, spread under notes and phrases.
#include "base/text.h"
#include "fuzz/target.h"
#include "project/spread_words.h"
#include "project/sung_lines.h"

#include <algorithm>

using namespace luft;
using namespace luft::project;

namespace {

std::vector<Mark> some_marks() {
    std::vector<Mark> all;
    for (int phrase = 0; phrase < 4; ++phrase) {
        const double from = 5.0 * phrase;
        Mark mark;
        mark.id = {100 + phrase};
        mark.what = marks::Phrase{{Seconds(from), Seconds(from + 4)}, {0.9}, ""};
        all.push_back(mark);
        for (int i = 0; i < 6; ++i) {
            marks::Note note;
            note.span = {Seconds(from + 0.6 * i), Seconds(from + 0.6 * i + 0.5)};
            note.pitch = MidiPitch(60 + i);
            mark.id = {10 * phrase + i + 1};
            mark.what = note;
            all.push_back(mark);
        }
    }
    return all;
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const std::vector<Mark> marks = some_marks();
    const std::string text = valid_utf8(fuzz::text_of(data, std::min<std::size_t>(size, 20'000)));
    // The second half again over words that the first half has left standing, some of them placed by hand.
    const std::string first = valid_utf8(text.substr(0, text.size() / 2));
    std::vector<SungWord> standing = spread_words(first, marks, {});
    for (std::size_t i = 0; i < standing.size(); ++i)
        standing[i].placed = i % 3 == 0;
    const std::vector<SungWord> words = spread_words(text, marks, standing);
    fuzz::demand(std::ranges::is_sorted(words, {}, &SungWord::at), "words stand in order of time");
    for (const SungWord& word : words) {
        fuzz::demand(is_utf8(word.text) && !word.text.empty(), "a word is text");
        fuzz::demand(word.text.find_first_of(" \t\r\n") == std::string::npos, "a word holds no space");
    }
    return 0;
}
