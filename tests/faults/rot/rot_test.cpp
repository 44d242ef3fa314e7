// Damaged project files, given to the real program: it never crashes, names the damage, and saves what can be
// read.
#include "faults/row.h"
#include "project/compare.h"
#include "tools/child.h"

#include <chrono>
#include <functional>
#include <sstream>

using namespace desk;
using luft::test::Row;
using luft::test::runs;

namespace {

constexpr std::size_t kPage = 4096, kSector = 512;
constexpr std::chrono::seconds kLongest{60};

struct Chance {
    std::uint32_t seed;
    std::size_t below(std::size_t bound) {
        seed = seed * 1664525 + 1013904223;
        return (seed >> 4) % bound;
    }
};

/// Something of everything, closed.
std::string whole_project() {
    Sample s;
    const PerformanceId b = s.add("b.wav", "B", true);
    s.project.store_listening(s.a, analysis());
    s.project.store_listening(b, analysis(400));
    for (int i = 0; i < 100; ++i)
        s.project.add_mark({{}, s.a, MarkState::kept, Origin::coach, note(i + 0.1, i + 0.9)});
    Moment m;
    m.performance = s.a;
    m.span = span(0.5, 1.5);
    m.remark = "The breath is early here.";
    m.shades = {{"onset", "breathy"}};
    m.beside = Quote{b, span(0.1, 1)};
    ScriptItem item;
    item.performance = s.a;
    item.moment = s.project.add_moment(m);
    item.at = Seconds(1.5);
    item.text = "Here.";
    item.quote = m.beside;
    s.project.add_script_item(item);
    s.project.set_sung_words(s.a,
                             {{{}, s.a, "wa", true, Seconds(0.1)}, {{}, s.a, "ter", false, Seconds(1.6)}});
    s.project.set_pins(s.a, b, {{Seconds(1), Seconds(1.5)}});
    { const Project closed = std::move(s.project); }
    return read_all(s.file);
}

/// Runs luftpause, which may fail, in words, but neither crash nor hang.
Outcome told(const std::vector<std::string>& arguments, Row& row) {
    Child child(LUFT_PROGRAM, arguments);
    if (auto ended = child.wait_for(kLongest)) {
        row.must(ended->status == 0 || ended->status == 1,
                 arguments[0] + " ended with " + std::to_string(ended->status) + ": " + ended->err);
        row.must(ended->status == 0 || ended->err.starts_with("luftpause: ") ||
                     ended->err.find("\nluftpause: ") != std::string::npos,
                 arguments[0] + " didn't say why");
        row.must(ended->err.find("unforeseen") == std::string::npos, arguments[0] + ": " + ended->err);
        return *ended;
    }
    row.lost(arguments[0] + " hung");
    return {};
}

/// True when only recordings are missing: what was saved is sound, and asks for a file.
bool only_recordings(const std::string& faults) {
    std::istringstream lines(faults);
    for (std::string line; std::getline(lines, line);)
        if (!line.starts_with("- '")) return false;
    return true;
}

/// Gives each of them to the program. `is_plain`: the damage can't be mistaken for an edit, so that it must
/// be named.
void give(Row& row, const std::function<void(std::string&, Chance&)>& damage, bool is_plain,
          std::uint32_t seed, int wanted) {
    static const std::string whole = whole_project();
    Folder sound;
    write_all(sound / "song.luft", whole);
    const std::string original = contents(sound / "song.luft");
    Chance chance{seed};
    int saved = 0;
    for (int run = 0; run < wanted; ++run) {
        row.run();
        INFO("seed " << seed << ", run " << run);
        Folder folder;
        const fs::path file = folder / "song.luft", fresh = folder / "fresh.luft";
        std::string bytes = whole;
        damage(bytes, chance);
        write_all(file, bytes);
        write_all(folder / "a.wav", noise(5000, 5)); // as Sample makes it
        // First what only reads.
        const Outcome check = told({"check", file.string()}, row);
        row.must(check.status != 0 || contents(file) == original || !is_plain, "the damage isn't named");
        told({"profile", file.string(), "--performance", "A"}, row);
        told({"export", file.string(), "--performance", "A", "--as", "marks-csv", "--out",
              (folder / "m.csv").string()},
             row);
        row.must(read_all(file) == bytes, "reading changed the damaged file");
        const Outcome rescue = told({"check", file.string(), "--rescue", fresh.string()}, row);
        row.must(read_all(file) == bytes, "the rescue changed the damaged file");
        if (rescue.status == 0) {
            ++saved;
            const Outcome again = told({"check", fresh.string()}, row);
            row.must(again.status == 0 || only_recordings(again.out),
                     "rescued, it isn't sound: " + again.out);
            told({"piece", fresh.string(), "--title", "After"}, row);
            row.must(told({"undo", fresh.string()}, row).out.starts_with("Undone"),
                     "rescued, it can't be edited");
        } else {
            row.must(!fs::exists(fresh), "half a rescue stands there");
        }
        // Then what edits.
        told({"piece", file.string(), "--title", "After"}, row);
        told({"undo", file.string(), "--steps", "200"}, row);
    }
    CHECK(saved > wanted / 2); // a project is rarely damaged beyond all saving
}

} // namespace

TEST_CASE("bytes of a project changed at random") {
    Row row("rot", "some bytes of the project file have changed",
            "1 to 40 bytes anywhere, at random; then luftpause check, profile, export, rescue, edit, undo");
    give(
        row,
        [](std::string& bytes, Chance& chance) {
            for (std::size_t i = 0, n = 1 + chance.below(40); i < n; ++i)
                bytes[chance.below(bytes.size())] = static_cast<char>(chance.below(256));
        },
        false, 31, runs(8, 300));
}

TEST_CASE("pages of a project zeroed") {
    Row row("rot", "pages of the project file have become empty",
            "1 to 4 pages of 4096 bytes filled with zeros, at random");
    give(
        row,
        [](std::string& bytes, Chance& chance) {
            for (std::size_t i = 0, n = 1 + chance.below(4); i < n; ++i)
                bytes.replace(kPage * chance.below(bytes.size() / kPage), kPage, kPage, '\0');
        },
        false, 32, runs(6, 200));
}

TEST_CASE("a project cut off") {
    Row row("rot", "the project file is cut off", "its end taken away, at a random byte in its second half");
    give(
        row,
        [](std::string& bytes, Chance& chance) {
            bytes.resize(bytes.size() / 2 + chance.below(bytes.size() / 2));
        },
        true, 33, runs(6, 200));
}

TEST_CASE("sectors of a project swapped") {
    Row row("rot", "sectors of the project file lie in each other's place",
            "1 to 8 pairs of 512 bytes swapped, at random");
    give(
        row,
        [](std::string& bytes, Chance& chance) {
            for (std::size_t i = 0, n = 1 + chance.below(8); i < n; ++i) {
                const std::size_t a = kSector * chance.below(bytes.size() / kSector),
                                  b = kSector * chance.below(bytes.size() / kSector);
                std::swap_ranges(bytes.begin() + static_cast<std::ptrdiff_t>(a),
                                 bytes.begin() + static_cast<std::ptrdiff_t>(a + kSector),
                                 bytes.begin() + static_cast<std::ptrdiff_t>(b));
            }
        },
        false, 34, runs(6, 200));
}
