#include "work.h"

#include "faults/failing.h"
#include "project/old_versions.h"
#include "scenes/sung.h"

#include <csignal>

namespace faults {
namespace {

void sing(const fs::path& file, std::size_t lines) {
    auto song = luft::scenes::three_lines();
    song.phrases.resize(lines);
    luft::scenes::write_sung(song, file);
}

/// A project of one performance of some four seconds, listened to, with a script.
void furnish_new(const fs::path& folder) {
    sing(folder / "a.wav", 1);
    sing(folder / "b.wav", 2);
    write_all(folder / "words.txt", "o-ver the wa-ter\nand home");
    done(folder, {"new", "@/song.luft", "--title", "Morning on the quay", "--words", "@/words.txt"});
    done(folder, {"add", "@/song.luft", "@/a.wav", "--label", "A"});
    done(folder, {"moment", "@/song.luft", "add", "--from", "0.6", "--to", "1.9", "--shade", "onset:breathy",
                  "--remark", "Listen to the start."});
    done(folder, {"script", "@/song.luft", "draft"});
}

void furnish(const fs::path& folder) {
    static const Folder made; // the same for all
    if (made.names().empty()) furnish_new(made.path());
    fs::copy(made.path(), folder);
}

void furnish_undone(const fs::path& folder) {
    furnish(folder);
    done(folder, {"undo", "@/song.luft", "--steps", "3"});
}

void furnish_old(const fs::path& folder) {
    for (const char* part : {kVersion1Derived, kVersion1Edited, kVersion1Journal, kVersion1Contents})
        execute(folder / "song.luft", part);
}

void furnish_damaged(const fs::path& folder) {
    furnish(folder);
    std::string bytes = read_all(folder / "song.luft");
    constexpr std::size_t kPage = 4096;
    for (std::size_t page = 5; page < bytes.size() / kPage; page += 9)
        bytes.replace(page * kPage, kPage, kPage, '\0');
    write_all(folder / "song.luft", bytes);
}

/// Killed when all of an edit but its last step was on disk.
void furnish_cut_off(const fs::path& folder) {
    furnish(folder);
    const std::vector<std::string> edit = in(folder, {"piece", "@/song.luft", "--title", "Cut off"});
    Room room(folder);
    const auto calls =
        try_failing(LUFT_PROGRAM, in(room.folder.path(), {"piece", "@/song.luft", "--title", "Cut off"}),
                    room.folder.path(), {})
            .calls;
    long last = 0;
    for (std::size_t i = 0; i < calls.size(); ++i)
        if (calls[i].starts_with("unlink")) last = static_cast<long>(i) + 1;
    REQUIRE(last > 0);
    const auto tried = try_failing(LUFT_PROGRAM, edit, folder, {.at = last, .kill = true});
    REQUIRE(tried.outcome.status == 128 + SIGKILL);
    REQUIRE(fs::file_size(folder / "song.luft-journal") > 0);
}

} // namespace

std::vector<std::string> in(const fs::path& folder, std::vector<std::string> arguments) {
    for (std::string& argument : arguments)
        if (argument.starts_with("@")) argument = folder.string() + argument.substr(1);
    return arguments;
}

void done(const fs::path& folder, const std::vector<std::string>& arguments) {
    const Outcome outcome = Child(LUFT_PROGRAM, in(folder, arguments)).wait();
    INFO(arguments[0] << ": " << outcome.err);
    REQUIRE(outcome.status == 0);
}

Work making_a_project() {
    return {.name = "making a project",
            .arguments = {"new", "@/fresh.luft", "--title", "Evening"},
            .furnish = [](const fs::path&) {},
            .project = "",
            .makes = "fresh.luft"};
}
Work adding(bool carry) {
    Work work{.name = carry ? "adding a recording, carried" : "adding a recording, linked",
              .arguments = {"add", "@/song.luft", "@/b.wav", "--label", "B", "--no-listen"},
              .furnish = furnish,
              .makes = ""};
    if (carry) work.arguments.emplace_back("--carry");
    return work;
}
Work adding_and_listening() {
    return {.name = "adding a recording and listening to it",
            .arguments = {"add", "@/song.luft", "@/b.wav", "--label", "B", "--voice", "alone"},
            .furnish = furnish,
            .makes = "",
            .is_long = true};
}
Work listening() {
    return {.name = "listening again",
            .arguments = {"listen", "@/song.luft", "--voice", "alone"},
            .furnish = furnish,
            .makes = "",
            .is_long = true};
}
Work editing_words() {
    return {.name = "editing the words",
            .arguments = {"piece", "@/song.luft", "--words", "@/a-words.txt"},
            .furnish =
                [](const fs::path& folder) {
                    furnish(folder);
                    write_all(folder / "a-words.txt", "eve-ning on the quay");
                },
            .makes = ""};
}
Work editing_a_moment() {
    return {.name = "adding a moment",
            .arguments = {"moment", "@/song.luft", "add", "--from", "2", "--to", "2.5", "--remark", "Here."},
            .furnish = furnish,
            .makes = ""};
}
Work drafting() {
    return {.name = "drafting the script",
            .arguments = {"script", "@/song.luft", "draft"},
            .furnish =
                [](const fs::path& folder) {
                    furnish(folder);
                    done(folder,
                         {"moment", "@/song.luft", "add", "--from", "2", "--to", "2.5", "--remark", "Here."});
                },
            .makes = ""};
}
Work undoing() {
    return {.name = "undoing",
            .arguments = {"undo", "@/song.luft", "--steps", "3"},
            .furnish = furnish,
            .makes = ""};
}
Work redoing() {
    return {.name = "doing again",
            .arguments = {"redo", "@/song.luft", "--steps", "3"},
            .furnish = furnish_undone,
            .makes = ""};
}
Work migrating() {
    return {.name = "bringing an older project up to date",
            .arguments = {"piece", "@/song.luft", "--writer", "M. Invented"},
            .furnish = furnish_old,
            .makes = ""};
}
Work rescuing() {
    return {.name = "rescuing a damaged project",
            .arguments = {"check", "@/song.luft", "--rescue", "@/saved.luft"},
            .furnish = furnish_damaged,
            .project = "",
            .makes = "saved.luft"};
}
Work rolling_back() {
    return {.name = "opening what a kill has cut off",
            .arguments = {"marks", "@/song.luft"},
            .furnish = furnish_cut_off,
            .makes = ""};
}
Work exporting() {
    return {.name = "writing all files",
            .arguments = {"export", "@/song.luft", "--all", "@/out", "--performance", "A"},
            .furnish = furnish,
            .makes = "",
            .is_long = true};
}

std::vector<Work> all_works() {
    return {making_a_project(), adding(false),   adding(true),       adding_and_listening(),
            listening(),        editing_words(), editing_a_moment(), drafting(),
            undoing(),          redoing(),       migrating(),        rescuing(),
            rolling_back(),     exporting()};
}

} // namespace faults
