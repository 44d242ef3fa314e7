#include "base/error.h"
#include "intake/intake.h"
#include "scenes/sung.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::intake;

namespace {

struct Desk {
    test::Folder folder;
    project::Project project = project::Project::create(folder / "song.luft", {"Ferry Song", {}, {}, {}, {}});
    Recording recording;

    Desk() {
        scenes::write_sung(scenes::three_lines(), folder / "sung.wav");
        recording.media = folder / "sung.wav";
        recording.details.label = "A";
        recording.details.performer = "Ilse Marnik";
    }
};

} // namespace

TEST_CASE("A recording comes in with its facts, marks, curves and proposed moments") {
    Desk desk;
    const Added added = add(desk.project, desk.recording, {});
    CHECK(added.performance.performer == "Ilse Marnik");
    CHECK(added.performance.facts.sample_rate_hz == 44100);
    CHECK(added.heard->analysis.phrases.size() == 3);
    CHECK(desk.project.marks(added.performance.id).size() > 12);
    CHECK(desk.project.curves(added.performance.id).frames() > 900);
    CHECK(static_cast<int>(desk.project.moments(added.performance.id).size()) == added.proposed);
}

TEST_CASE(
    "The piece's words stand under the notes that were heard, and hand-placed ones stay on listening again") {
    Desk desk;
    desk.project.set_piece(
        {"Ferry Song", {}, {}, {}, "low moon a-bove the bay\nthe wind has gone a-way\nto me"});
    const Added added = add(desk.project, desk.recording, {});
    auto words = desk.project.sung_words(added.performance.id);
    REQUIRE(words.size() == 14);
    const auto marks = desk.project.marks(added.performance.id);
    const auto begins_a_note = [&](const project::SungWord& word) {
        return std::ranges::any_of(marks, [&](const project::Mark& mark) {
            return mark.kind() == project::MarkKind::note && mark.span().start == word.at;
        });
    };
    CHECK(std::ranges::count_if(words, begins_a_note) > 8);
    CHECK(words.front().at < Seconds(words.back().at.value() - 3)); // over the three phrases
    desk.project.move_sung_word(words[1].id, words[1].at + Seconds(0.05));
    words = desk.project.sung_words(added.performance.id);
    listen_again(desk.project, added.performance, marks::Accompaniment::find_out, {});
    CHECK(desk.project.sung_words(added.performance.id) == words);
}

TEST_CASE("A label that is taken is refused before anything is listened to") {
    Desk desk;
    desk.recording.listen = false;
    add(desk.project, desk.recording, {});
    int steps = 0;
    desk.recording.listen = true;
    CHECK_THROWS_AS(add(desk.project, desk.recording, Progress([&](double, std::string_view) { ++steps; })),
                    Error);
    CHECK(steps == 0);
    CHECK(desk.project.performances().size() == 1);
}

TEST_CASE("A file that is no recording leaves the project as it was") {
    Desk desk;
    test::write_all(desk.folder / "words.txt", "The ferry waits for no one, and neither does the tide.");
    desk.recording.media = desk.folder / "words.txt";
    CHECK_THROWS_AS(add(desk.project, desk.recording, {}), Error);
    CHECK(desk.project.performances().empty());
}

TEST_CASE("Stopping while it listens leaves the project as it was") {
    Desk desk;
    std::stop_source stop;
    const Progress progress(
        [&](double done, std::string_view) {
            if (done > 0.3) stop.request_stop();
        },
        stop.get_token());
    CHECK_THROWS_AS(add(desk.project, desk.recording, progress), Stopped);
    CHECK(desk.project.performances().empty());
}

TEST_CASE(
    "A recording that has lost its end is refused with the caller's remedy, or taken as far as it goes") {
    Desk desk;
    const std::string whole = test::read_all(desk.folder / "sung.wav");
    test::write_all(desk.folder / "cut.wav", whole.substr(0, whole.size() / 2));
    desk.recording.media = desk.folder / "cut.wav";
    desk.recording.remedy = "take it as it is.";
    try {
        add(desk.project, desk.recording, {});
        FAIL("it was taken");
    } catch (const Error& error) {
        CHECK(error.advice().find("take it as it is.") != std::string::npos);
    }
    desk.recording.listening.partial = true;
    CHECK(add(desk.project, desk.recording, {}).performance.facts.duration < Seconds(8));
}

TEST_CASE("Listening again keeps what the coach kept and proposes moments anew") {
    Desk desk;
    const Added added = add(desk.project, desk.recording, {});
    const auto marks = desk.project.marks(added.performance.id);
    REQUIRE_FALSE(marks.empty());
    const auto breath =
        std::ranges::find_if(marks, [](const auto& m) { return m.kind() == project::MarkKind::breath; });
    REQUIRE(breath != marks.end());
    desk.project.set_mark_state(breath->id, project::MarkState::dropped);
    listen_again(desk.project, added.performance, marks::Accompaniment::find_out, {});
    const auto after = desk.project.marks(added.performance.id);
    CHECK(after.size() + 1 == marks.size());
    CHECK(desk.project.moments(added.performance.id).size() > 0);
}
