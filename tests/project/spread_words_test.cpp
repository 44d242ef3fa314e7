// Lines onto phrases, syllables onto notes: worked examples.
#include "desk.h"
#include "project/line_places.h"
#include "project/note_places.h"
#include "project/spread_words.h"

#include <set>

using namespace desk;

namespace {

/// Notes that follow each other from 0, of these lengths.
std::vector<SungNote> notes(const std::vector<double>& lengths, std::set<std::size_t> begins = {}) {
    std::vector<SungNote> all;
    double at = 0;
    for (const double length : lengths) {
        all.push_back({span(at, at + length), begins.contains(all.size())});
        at += length;
    }
    return all;
}

std::vector<double> placed(const std::string& line, const std::vector<SungNote>& on) {
    std::vector<double> out;
    for (const Seconds at : places_on_notes(sung_lines(line).front(), on))
        out.push_back(std::round(at.value() * 1000) / 1000);
    return out;
}

using Times = std::vector<double>;

std::string blocks(const std::vector<LineSize>& lines, const std::vector<int>& counts) {
    std::string text;
    for (const LineBlock& b : places_on_phrases(lines, counts)) {
        for (std::size_t i = 0; i < b.lines; ++i)
            text += std::to_string(b.line + i);
        text += ">";
        for (std::size_t j = 0; j < b.phrases; ++j)
            text += std::to_string(b.phrase + j);
        text += " ";
    }
    return text;
}

std::vector<LineSize> sizes(const std::vector<int>& asked) {
    std::vector<LineSize> all;
    for (const int n : asked)
        all.push_back({n, {}, {}});
    return all;
}

/// Marks of a song: the note starts of each phrase, each note up to the next one, the last 1 s long.
std::vector<Mark> song(const std::vector<Times>& phrases) {
    std::vector<Mark> marks;
    for (const Times& starts : phrases) {
        const double end = starts.back() + 1;
        marks.push_back({{}, {1}, MarkState::proposed, Origin::detected, phrase(starts.front(), end)});
        for (std::size_t i = 0; i < starts.size(); ++i)
            marks.push_back({{},
                             {1},
                             MarkState::proposed,
                             Origin::detected,
                             note(starts[i], i + 1 < starts.size() ? starts[i + 1] : end)});
    }
    return marks;
}

std::string shown(const std::vector<SungWord>& words) {
    std::string text;
    for (const SungWord& w : words) {
        char at[32];
        std::snprintf(at, sizeof at, "%g", std::round(w.at.value() * 100) / 100);
        text += w.text + (w.joins ? "-" : "") + "@" + at + (w.placed ? "! " : " ");
    }
    return text;
}

SungWord& find(std::vector<SungWord>& words, const std::string& text) {
    return *std::ranges::find(words, text, &SungWord::text);
}

constexpr const char* kWords = "One moon a-bove\nthe bay was low";

} // namespace

TEST_CASE("as many notes as syllables: one each") {
    CHECK(placed("o-ver the bay", notes({1, 1, 1, 1})) == Times{0, 1, 2, 3});
}

TEST_CASE("a word that isn't divided takes as many notes as it has vowels") {
    CHECK(placed("over water low", notes({1, 1, 1, 1, 1})) == Times{0, 2, 4});
    CHECK(placed("low over water", notes({1, 1, 1, 1, 1})) == Times{0, 1, 3});
}

TEST_CASE("spare notes are sung on the last syllable of a word, and on the one that is held longest") {
    CHECK(placed("wa-ter", notes({1, 1, 1})) == Times{0, 1});             // ter holds two
    CHECK(placed("low moon bay", notes({1, 1, 1, 3})) == Times{0, 1, 2}); // bay
    CHECK(placed("low moon bay", notes({3, 1, 1, 1})) == Times{0, 4, 5}); // low
}

TEST_CASE("short notes are ornaments: no syllable begins on one while others are free") {
    CHECK(placed("the bay was", notes({1, 1, 0.2, 0.2, 0.2, 1})) == Times{0, 1, 2.6});
    CHECK(placed("bay was", notes({1, 0.1, 0.1, 1})) == Times{0, 1.2});
}

TEST_CASE("no syllable is held over a breath while the words allow it") {
    CHECK(placed("hill shine", notes({1, 1, 1, 1, 1}, {0, 2})) == Times{0, 2});
    CHECK(placed("hill shine", notes({1, 1, 1, 1, 1}, {0, 4})) == Times{0, 4});
}

TEST_CASE("with fewer notes, syllables share a note evenly, and the long notes first") {
    CHECK(placed("one two three", notes({3})) == Times{0, 1, 2});
    CHECK(placed("one two three", notes({1, 2})) == Times{0, 1, 2});
    CHECK(placed("one two three", notes({2, 1})) == Times{0, 1, 2});
    CHECK(placed("one two three four", notes({4, 1, 1})) == Times{0, 2, 4, 5});
    CHECK(placed("one two", {}).empty());
}

TEST_CASE("a line's long last note is shared only when it is much longer than the others") {
    // The sample's tenor, as the ear hears him: 'gone a-' on one note, then '-way' held.
    CHECK(placed("wind has gone away", notes({0.7, 1.4, 1.6})) == Times{0, 0.7, 1.4, 2.1});
    CHECK(placed("wind has gone away", notes({0.7, 1.0, 3.0})) == Times{0, 0.7, 1.7, 3.2});
}

TEST_CASE("lines go to phrases in order") {
    CHECK(blocks(sizes({7, 7, 7}), {7, 8, 6}) == "0>0 1>1 2>2 ");
    CHECK(blocks(sizes({7, 7, 7}), {12, 14, 13}) == "0>0 1>1 2>2 "); // richly ornamented
    CHECK(blocks({}, {3}).empty());
    CHECK(blocks(sizes({3}), {}).empty());
}

TEST_CASE("two lines share the phrase that is long enough for both") {
    CHECK(blocks(sizes({7, 7, 7}), {14, 7}) == "01>0 2>1 ");
    CHECK(blocks(sizes({7, 7, 7}), {7, 14}) == "0>0 12>1 ");
    CHECK(blocks(sizes({4, 4, 4, 4, 4}), {5}) == "01234>0 ");
}

TEST_CASE("a line with a breath in it goes over two phrases") {
    CHECK(blocks(sizes({7, 7, 7}), {7, 3, 4, 7}) == "0>0 1>12 2>3 ");
}

TEST_CASE("words typed once and sung twice leave the second time empty") {
    CHECK(blocks(sizes({7, 7}), {7, 7, 7, 7}) == "0>0 1>1 ");
    CHECK(blocks(sizes({7, 8, 6, 7}), {7, 9, 6, 7, 8, 8, 6, 7}) == "0>0 1>1 2>2 3>3 ");
}

TEST_CASE("a line tied to a phrase goes there, and the others keep their order") {
    auto lines = sizes({7, 7});
    lines[0].first_tied = lines[0].last_tied = 2;
    CHECK(blocks(lines, {7, 7, 7, 7}) == "0>2 1>3 ");
}

TEST_CASE("words are spread over the notes of their phrases") {
    const auto words = spread_words(kWords, song({{1, 2, 3, 4}, {6, 7, 8, 9}}), {});
    CHECK(shown(words) == "One@1 moon@2 a-@3 bove@4 the@6 bay@7 was@8 low@9 ");
}

TEST_CASE("dropped notes and phrases don't count; without phrases rests divide, without notes no word") {
    auto marks = song({{1, 2, 2.5, 3, 4}, {6, 7, 8, 9}});
    marks[3].state = MarkState::dropped; // the note at 2.5
    CHECK(shown(spread_words(kWords, marks, {})) == "One@1 moon@2 a-@3 bove@4 the@6 bay@7 was@8 low@9 ");
    std::erase_if(marks, [](const Mark& m) { return m.kind() == MarkKind::phrase; });
    CHECK(shown(spread_words(kWords, marks, {})) == "One@1 moon@2 a-@3 bove@4 the@6 bay@7 was@8 low@9 ");
    std::erase_if(marks, [](const Mark& m) { return m.kind() == MarkKind::note; });
    CHECK(spread_words(kWords, marks, {}).empty());
}

TEST_CASE("a word that the coach has placed stays, and the others are spread around it") {
    const auto marks = song({{1, 2, 3, 4, 5}, {7, 8, 9, 10}});
    auto words = spread_words(kWords, marks, {});
    CHECK(shown(words) == "One@1 moon@2 a-@3 bove@4 the@7 bay@8 was@9 low@10 ");
    find(words, "moon").at = Seconds(3);
    find(words, "moon").placed = true;
    words = spread_words(kWords, marks, words);
    CHECK(shown(words) == "One@1 moon@3! a-@4 bove@5 the@7 bay@8 was@9 low@10 ");
    CHECK(words == spread_words(kWords, marks, words)); // and again nothing changes

    SECTION("at a note's edge, give or take what a hand is off") {
        for (const double off : {-0.08, 0.08}) {
            find(words, "moon").at = Seconds(3 + off);
            const auto again = spread_words(kWords, marks, words);
            CHECK(again[2].at == Seconds(4));
            CHECK(again[3].at == Seconds(5));
        }
    }
    SECTION("in the middle of a note, which then has room for the one before") {
        find(words, "moon").at = Seconds(1.5);
        CHECK(shown(spread_words(kWords, marks, words)) ==
              "One@1 moon@1.5! a-@2 bove@3 the@7 bay@8 was@9 low@10 ");
    }
    SECTION("on the first note, where those before it have none left") {
        find(words, "moon").at = Seconds(1);
        const auto again = spread_words(kWords, marks, words);
        CHECK(again[0].at == Seconds(1));
        CHECK(again[1].at == Seconds(1));
    }
    SECTION("in another phrase: its line goes there") {
        words.resize(4);
        find(words, "moon").at = Seconds(8);
        CHECK(shown(spread_words("One moon a-bove", marks, words)) == "One@7 moon@8! a-@9 bove@10 ");
    }
}

TEST_CASE("hours of words, and one phrase without end, are spread as well") {
    std::vector<Times> phrases;
    std::string text;
    for (int i = 0; i < 700; ++i) {
        phrases.push_back({});
        for (int k = 0; k < 6; ++k)
            phrases.back().push_back(i * 9.0 + k);
        text += "low moon above the bay\n";
    }
    const auto words = spread_words(text, song(phrases), {});
    REQUIRE(words.size() == 3500);
    CHECK(words[5 * 500].at == Seconds(500 * 9));
    Times starts;
    for (int i = 0; i < 3000; ++i)
        starts.push_back(i * 0.5);
    std::string line;
    for (int i = 0; i < 1000; ++i)
        line += "la ";
    CHECK(spread_words(line, song({starts}), {}).back().at > Seconds(1000));
    // Many lines on few phrases: none is lost.
    CHECK(spread_words(text, song({{1, 2, 3}, {6, 7}}), words).size() == 3500);
}

TEST_CASE(
    "wherever words are placed by hand, they stay, the order holds, and spreading again changes nothing") {
    const auto marks = song({{1, 2, 3, 4, 5}, {7, 8, 9, 10}, {12, 12.5, 13}});
    std::uint32_t seed = 1;
    const auto random = [&](std::uint32_t below) {
        seed = seed * 1664525 + 1013904223;
        return (seed >> 16) % below;
    };
    for (int turn = 0; turn < 300; ++turn) {
        auto words = spread_words(kWords, marks, {});
        std::vector<double> times;
        for (std::size_t i = 0; i < words.size(); ++i)
            times.push_back(random(1600) / 100.0);
        std::ranges::sort(times);
        for (std::size_t i = 0; i < words.size(); ++i)
            if (random(3) == 0) words[i].at = Seconds(times[i]), words[i].placed = true;
        const auto again = spread_words(kWords, marks, words);
        INFO(shown(words) << "-> " << shown(again));
        REQUIRE(again.size() == words.size());
        CHECK(std::ranges::is_sorted(again, {}, &SungWord::at));
        for (std::size_t i = 0; i < words.size(); ++i)
            if (words[i].placed) CHECK(again[i] == words[i]);
        CHECK(spread_words(kWords, marks, again) == again);
    }
}

TEST_CASE("words keep their rows and places when others are put in, taken out or divided") {
    const auto marks = song({{1, 2, 3, 4, 5}, {7, 8, 9, 10}});
    auto words = spread_words(kWords, marks, {});
    for (std::size_t i = 0; i < words.size(); ++i)
        words[i].id = {static_cast<std::int64_t>(i) + 1};
    find(words, "bay").at = Seconds(9);
    find(words, "bay").placed = true;
    auto again = spread_words("One long moon a-bove\nthe bay lay low", marks, words);
    CHECK(shown(again) == "One@1 long@2 moon@3 a-@4 bove@5 the@7 bay@9! lay@9.5 low@10 ");
    CHECK(find(again, "moon").id == SungWordId{2});
    CHECK(find(again, "long").id == SungWordId{});
    CHECK(spread_words("", marks, words).empty());
}

TEST_CASE("the sample's words stand where the sample's singers sing them") {
    // sample-project/words.txt, and the note starts of sample-project/truth/over-water-marnik.json: no breath
    // after "home", and a turn of five notes on "bay".
    const std::string words =
        "Over water boats come home,\nevening in a coat of foam;\none long moon above the "
        "bay\nand the wind has gone away.\n\nAll the ropes are lying slow,\nevery oar is "
        "laid below;\nup the hill the windows shine,\nand the nearest one is mine.\n";
    const auto marnik =
        song({{5.01, 5.94, 6.25, 6.95, 7.5, 8.2, 8.84, 10.0, 10.94, 11.25, 11.88, 12.57, 12.81, 13.22},
              {15.01, 15.62, 16.25, 17.19, 17.5, 18.12, 18.44, 18.75, 18.89, 19.02, 19.16},
              {20.01, 20.31, 20.62, 21.34, 21.95, 22.5, 23.12},
              {30.13, 30.94, 31.25, 31.89, 32.5, 33.12, 33.87},
              {35.03, 35.94, 36.25, 36.88, 37.5, 37.81, 38.12},
              {40.01, 40.62, 41.34, 42.19, 42.5, 43.12, 43.56},
              {45.03, 45.31, 45.62, 46.25, 46.88, 47.5, 48.12}});
    CHECK(shown(spread_words(words, marnik, {})) ==
          "Over@5.01 water@6.25 boats@7.5 come@8.2 home,@8.84 "
          "evening@10 in@11.25 a@11.88 coat@12.57 of@12.81 foam;@13.22 "
          "one@15.01 long@15.62 moon@16.25 above@17.19 the@18.12 bay@18.44 "
          "and@20.01 the@20.31 wind@20.62 has@21.34 gone@21.95 away.@22.5 "
          "All@30.13 the@30.94 ropes@31.25 are@31.89 lying@32.5 slow,@33.87 "
          "every@35.03 oar@36.25 is@36.88 laid@37.5 below;@37.81 "
          "up@40.01 the@40.62 hill@41.34 the@42.19 windows@42.5 shine,@43.56 "
          "and@45.03 the@45.31 nearest@45.62 one@46.88 is@47.5 mine.@48.12 ");
    // As over-water-vasslow.json has it from line 6 on: a breath after "hill".
    const auto vasslow = song({{40.13, 41.07, 41.43, 42.14, 42.86, 43.21, 43.57},
                               {45.72, 46.43, 47.23},
                               {48.22, 48.57, 49.29, 49.77},
                               {51.44, 51.79, 52.14, 52.86, 53.57, 54.29, 55.0}});
    CHECK(shown(spread_words("every oar is laid below;\nup the hill the windows shine,\n"
                             "and the nearest one is mine.",
                             vasslow, {})) ==
          "every@40.13 oar@41.43 is@42.14 laid@42.86 below;@43.21 "
          "up@45.72 the@46.43 hill@47.23 the@48.22 windows@48.57 shine,@49.77 "
          "and@51.44 the@51.79 nearest@52.14 one@53.57 is@54.29 mine.@55 ");
}
