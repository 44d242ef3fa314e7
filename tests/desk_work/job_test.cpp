#include "desk/work/job.h"
#include "scenes/sung.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <thread>

using namespace luft;
using namespace luft::desk;

namespace {

struct Room {
    luft::test::Folder folder;
    intake::Recording recording;

    explicit Room(int times = 1) {
        project::Project::create(folder / "song.luft", {"Ferry Song", {}, {}, {}, {}});
        scenes::write_sung(scenes::three_lines(times), folder / "sung.wav");
        recording.media = folder / "sung.wav";
    }
};

void wait_for(const Job& job) {
    while (!job.state().finished)
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
}

} // namespace

TEST_CASE("A job adds a recording beside the window, over a connection of its own") {
    Room room;
    const project::Project open = project::Project::open(room.folder / "song.luft");
    Job job(room.folder / "song.luft", room.recording);
    wait_for(job);
    REQUIRE_FALSE(job.outcome().fault);
    REQUIRE(job.outcome().added);
    CHECK(open.performances().size() == 1);
    CHECK(open.marks(job.outcome().added->performance.id).size() > 10);
    CHECK(job.state().done == Approx(1).margin(0.02));
}

TEST_CASE("A job that is stopped leaves the project as it was") {
    Room room(10);
    Job job(room.folder / "song.luft", room.recording);
    job.stop();
    wait_for(job);
    CHECK_FALSE(job.outcome().added);
    CHECK_FALSE(job.outcome().fault);
    CHECK(project::Project::open(room.folder / "song.luft").performances().empty());
}

TEST_CASE("A job says what went wrong") {
    Room room;
    luft::test::write_all(room.folder / "words.txt", "The ferry waits for no one.");
    room.recording.media = room.folder / "words.txt";
    Job job(room.folder / "song.luft", room.recording);
    wait_for(job);
    REQUIRE(job.outcome().fault);
    CHECK(std::string(job.outcome().fault->what()).find("words.txt") != std::string::npos);
}

TEST_CASE("A job writes the files that were chosen, and nothing else") {
    Room room;
    Job listening(room.folder / "song.luft", room.recording);
    wait_for(listening);
    REQUIRE(listening.outcome().added);
    const auto& heard = listening.outcome().added->performance;
    Job job(room.folder / "song.luft", Job::Files{heard.id, room.folder / "out", {"marks-csv", "sheet-pdf"}});
    wait_for(job);
    REQUIRE(job.outcome().written);
    CHECK(job.outcome().written->faults.empty());
    CHECK(job.outcome().written->files ==
          std::vector<std::filesystem::path>{room.folder / "out" / (heard.label + "-sheet.pdf"),
                                             room.folder / "out" / (heard.label + "-marks.csv")});
    std::size_t there = 0;
    for ([[maybe_unused]] const auto& file : std::filesystem::directory_iterator(room.folder / "out"))
        ++there;
    CHECK(there == 2);
}
