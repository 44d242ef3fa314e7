// Damaged projects: what is whole in them comes into a new one, which is sound.
#include "compare.h"
#include "project/file_header.h"
#include "project/page_file.h"
#include "project/rescue.h"
#include "project/schema.h"

#include <set>

using namespace desk;

namespace {

constexpr std::size_t kPage = 4096;

/// Something of everything, closed; two performances, one of them carried.
struct Furnished : Sample {
    fs::path damaged = folder / "damaged.luft";
    fs::path fresh = folder / "fresh.luft";
    std::string bytes;

    explicit Furnished(int notes = 10) {
        const PerformanceId b = add("b.wav", "B", true);
        project.store_listening(a, analysis());
        for (int i = 0; i < notes; ++i)
            project.add_mark({{}, a, MarkState::kept, Origin::coach, note(i + 0.1, i + 0.9)});
        Moment m;
        m.performance = a;
        m.span = span(0.5, 1.5);
        m.remark = "The breath is early here.";
        m.shades = {{"onset", "breathy"}};
        m.drill = "silent-breath";
        m.beside = Quote{b, span(0.1, 1)};
        const MomentId id = project.add_moment(m);
        ScriptItem item;
        item.performance = a;
        item.moment = id;
        item.at = Seconds(1.5);
        item.quote = m.beside;
        project.add_script_item(item);
        project.set_sung_words(a, {{{}, a, "wa", true, Seconds(0.1)}, {{}, a, "ter", false, Seconds(1.6)}});
        project.set_pins(a, b, {{Seconds(1), Seconds(1.5)}});
        const Project closed = std::move(project);
        bytes = read_all(file);
    }

    Rescue rescued(const std::string& from) {
        fs::remove(fresh);
        fs::remove(damaged.string() + "-journal");
        write_all(damaged, from);
        Rescue result = rescue(damaged, fresh);
        CHECK((read_all(damaged) == from)); // never written to
        return result;
    }
};

std::set<std::string> rows_of(const fs::path& file) {
    std::set<std::string> rows;
    std::istringstream all(contents(file));
    for (std::string row; std::getline(all, row);)
        rows.insert(row);
    return rows;
}

/// Reads everything of a project, as the program would.
void read_everything(const fs::path& file) {
    Project p = Project::open(file);
    for (const Damage& damage : p.check())
        FAIL_CHECK(damage.what);
    for (const Performance& x : p.performances()) {
        (void)p.marks(x.id, true);
        (void)p.moments(x.id, true);
        (void)p.curves(x.id);
        (void)p.script(x.id);
        (void)p.sung_words(x.id);
    }
    (void)p.vocabulary();
    p.set_piece({"after", "", "", "", ""});
    CHECK(p.undo());
}

} // namespace

TEST_CASE("a sound project is rescued to the bit, its history included") {
    Furnished s;
    const Rescue result = s.rescued(s.bytes);
    CHECK(result.missing.empty());
    INFO(result.saved);
    for (const std::string& missing : result.missing)
        UNSCOPED_INFO(missing);
    CHECK(result.saved.starts_with("2 performances, 16 marks, 1 moment"));
    CHECK((contents(s.fresh) == contents(s.damaged)));
    Project again = Project::open(s.fresh);
    Project before = Project::open(s.damaged);
    int edits = 0;
    while (const auto undone = before.undo()) {
        CHECK(again.undo() == undone);
        ++edits;
    }
    CHECK(edits > 10);
    CHECK((contents(s.fresh) == contents(s.damaged)));
}

TEST_CASE("with any page full of noise, all the others' rows are saved, and what is gone is said") {
    Furnished s(200);
    write_all(s.damaged, s.bytes);
    const auto before = rows_of(s.damaged);
    for (std::size_t page = 0; page < s.bytes.size() / kPage; ++page) {
        INFO("page " << page + 1 << " of " << s.bytes.size() / kPage);
        std::string broken = s.bytes;
        broken.replace(page * kPage, kPage, noise(kPage, static_cast<std::uint32_t>(page) + 7));
        const Rescue result = s.rescued(broken);
        const auto after = rows_of(s.fresh);
        // An index is made anew.
        CHECK((!result.missing.empty() || after == before));
        read_everything(s.fresh);
        // Rows lie some thirty to a page: no more than two pages' worth may be gone.
        std::size_t gone = 0;
        for (const std::string& row : before)
            if (!after.contains(row)) ++gone;
        CHECK(gone <= 80);
    }
}

TEST_CASE("rows are found again when the page that leads to them is lost") {
    Furnished s(2000);
    Database database(s.file, Database::Mode::read);
    const auto root = database.number("SELECT rootpage FROM sqlite_schema WHERE name = 'mark'");
    std::string broken = s.bytes;
    REQUIRE(broken[static_cast<std::size_t>(root - 1) * kPage] == 5); // leads to others
    broken.replace(static_cast<std::size_t>(root - 1) * kPage, kPage, std::string(kPage, '\0'));
    const Rescue result = s.rescued(broken);
    INFO(result.saved);
    for (const std::string& missing : result.missing)
        UNSCOPED_INFO(missing);
    CHECK(result.saved.starts_with("2 performances, 2006 marks"));
    CHECK(result.missing ==
          std::vector<std::string>{"Pages of the file can't be read; there may have been more marks.",
                                   "The history of edits stayed behind: nothing from before can be undone."});
    CHECK(contents(s.fresh) == contents(s.file));
}

TEST_CASE("without its first page, a project is known by its rows") {
    Furnished s;
    std::string broken = s.bytes;
    broken.replace(0, kPage, std::string(kPage, '\xff'));
    const Rescue result = s.rescued(broken);
    INFO(result.saved);
    for (const std::string& missing : result.missing)
        UNSCOPED_INFO(missing);
    CHECK(result.saved.starts_with("2 performances, 16 marks, 1 moment"));
    const Project p = Project::open(s.fresh);
    CHECK(p.moments(s.a).front().remark == "The breath is early here.");
    CHECK(p.piece().title == "Morning on the quay");
}

TEST_CASE("cut off at any length, a project gives what is left of it, or is refused in words") {
    Furnished s;
    std::size_t saved = 0;
    for (std::size_t length = 0; length < s.bytes.size(); length += 1777) {
        INFO(length << " of " << s.bytes.size());
        try {
            const Rescue result = s.rescued(s.bytes.substr(0, length));
            CHECK_FALSE(result.missing.empty());
            read_everything(s.fresh);
            ++saved;
        } catch (const Error& e) {
            CHECK(e.fault() == Fault::unreadable);
            CHECK_FALSE(fs::exists(s.fresh));
        }
    }
    CHECK(saved > 20);
}

TEST_CASE("bits flipped anywhere: what comes of it is sound, or refused in words") {
    Furnished s(100);
    std::uint32_t seed = 17;
    int saved = 0;
    for (int run = 0; run < 200; ++run) {
        std::string broken = s.bytes;
        for (int flip = 0; flip < 1 + run % 40; ++flip) {
            seed = seed * 1664525 + 1013904223;
            broken[(seed >> 4) % broken.size()] ^= static_cast<char>(1U << (seed % 8));
        }
        INFO("run " << run);
        try {
            s.rescued(broken);
            read_everything(s.fresh);
            ++saved;
        } catch (const Error& e) {
            CHECK((e.fault() == Fault::unreadable || e.fault() == Fault::newer));
        }
    }
    CHECK(saved >= 195);
}

TEST_CASE("a carried recording that isn't whole is left out, and the performance asks for its file") {
    Furnished s;
    std::string broken = s.bytes;
    const std::string recording = read_all(s.folder / "b.wav");
    const std::size_t at = broken.find(recording.substr(100, 64));
    REQUIRE(at != std::string::npos);
    broken[at + 10] ^= 1;
    const Rescue result = s.rescued(broken);
    REQUIRE(result.missing.size() == 2);
    CHECK(result.missing[0] ==
          "The recording carried for 'B' isn't whole; link it to the file that it was carried from.");
    Project p = Project::open(s.fresh);
    CHECK_FALSE(p.performance("B").media.carried);
    p.relink(p.performance("B").id, s.folder / "b.wav");
    CHECK(p.media(p.performance("B"), true)->size() == 5000);
}

TEST_CASE("words whose times were damaged into another order are put in order again") {
    Furnished s;
    write_all(s.damaged, s.bytes);
    execute(s.damaged, "UPDATE sung_word SET at_s = 2.5 WHERE ordinal = 1");
    const Rescue result = s.rescued(read_all(s.damaged));
    REQUIRE(result.missing.size() == 2);
    CHECK(result.missing[0] == "The sung words were put in order again.");
    const Project p = Project::open(s.fresh);
    CHECK(p.check().empty());
    CHECK(p.sung_words(s.a).front().text == "ter");
}

TEST_CASE("a history of edits that doesn't hang together is named, and stays behind") {
    const auto torn = GENERATE(
        "UPDATE journal_step SET entry = 5000 WHERE id = 8", // an edit that isn't there
        "UPDATE journal_step SET entry = 1 WHERE id = 8",    // another one's
        "DELETE FROM journal_step WHERE entry = 3", "UPDATE journal_entry SET undone = 1 WHERE id = 2");
    INFO(torn);
    Furnished s;
    write_all(s.damaged, s.bytes);
    execute(s.damaged, torn);
    const std::vector<Damage> named = Project::open(s.damaged, Access::read).check();
    CHECK(std::ranges::count(
              named, "The history of edits doesn't hang together: undo may not lead back to what was.",
              &Damage::what) == 1);
    const Rescue result = s.rescued(read_all(s.damaged));
    CHECK(result.missing == std::vector<std::string>{"The history of edits couldn't be read: nothing from "
                                                     "before can be undone."});
    read_everything(s.fresh);
}

TEST_CASE("a lost performance gets one that stands in for it, and its moments stay") {
    Furnished s;
    std::string broken = s.bytes;
    Database database(s.file, Database::Mode::read);
    const auto root = database.number("SELECT rootpage FROM sqlite_schema WHERE name = 'performance'");
    broken.replace(static_cast<std::size_t>(root - 1) * kPage, kPage, noise(kPage));
    s.rescued(broken);
    const Project p = Project::open(s.fresh);
    REQUIRE(p.performances().size() == 1); // of the other one there is nothing to keep
    CHECK(p.performances()[0].label == "lost-1");
    CHECK(p.performances()[0].facts.duration == Seconds(3)); // as it was listened to
    CHECK(p.moments(s.a).front().remark == "The breath is early here.");
}

TEST_CASE(
    "what isn't there, isn't a project or is of a newer version isn't rescued; nothing is overwritten") {
    Furnished s;
    CHECK(fault_of([&] { rescue(s.folder / "none.luft", s.fresh); }) == Fault::not_found);
    CHECK(fault_of([&] { s.rescued(noise(20000)); }) == Fault::unreadable);
    CHECK(fault_of([&] { s.rescued(""); }) == Fault::unreadable);
    CHECK_FALSE(fs::exists(s.fresh));
    write_all(s.fresh, "mine");
    CHECK(fault_of([&] { rescue(s.file, s.fresh); }) == Fault::cannot_write);
    CHECK(read_all(s.fresh) == "mine");
    execute(s.file, "PRAGMA user_version = " + std::to_string(kVersionWritten + 1));
    CHECK(fault_of([&] { rescue(s.file, s.folder / "other.luft"); }) == Fault::newer);
    CHECK_FALSE(fs::exists(s.folder / "other.luft"));
}

TEST_CASE("a rescue that is told to stop leaves nothing behind") {
    Furnished s;
    std::stop_source stop;
    const Progress progress(
        [&](double done, std::string_view) {
            if (done > 0.2) stop.request_stop();
        },
        stop.get_token());
    CHECK_THROWS_AS(rescue(s.file, s.fresh, progress), Stopped);
    CHECK_FALSE(fs::exists(s.fresh));
    CHECK_FALSE(fs::exists(s.fresh.string() + "-journal"));
}
