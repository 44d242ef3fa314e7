#include "room.h"

#include "faults/row.h"
#include "scenes/sung.h"
#include "tools/files.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <iostream>

namespace luft::stop {
namespace {

namespace fs = std::filesystem;
using test::Child;
using test::Outcome;

void done(const test::Folder& folder, std::vector<std::string> arguments) {
    for (std::string& argument : arguments)
        if (argument.starts_with('@')) argument = folder / argument.substr(1);
    Child child(LUFT_PROGRAM, arguments);
    const Outcome outcome = child.wait();
    INFO(arguments.front() << ": " << outcome.err);
    REQUIRE(outcome.status == 0);
}

/// Of everything in the project's tables, by SQLite's own tool.
std::string contents_of(const fs::path& project) {
    return test::run("sqlite3 " + test::quoted(project) + " .sha3sum");
}

} // namespace

const std::vector<Work>& works() {
    static const std::vector<Work> all{
        {"adding a linked recording", {"add", "@song.luft", "@b.wav", "--label", "C"}},
        {"adding a carried recording", {"add", "@song.luft", "@b.wav", "--label", "C", "--carry"}},
        {"listening to a file", {"listen", "@b.wav", "--out", "@heard.json"}, "heard.json"},
        {"listening again", {"listen", "@song.luft", "--performance", "A"}},
        {"proposing moments", {"moment", "@song.luft", "propose", "--performance", "A"}},
        {"writing every format", {"export", "@song.luft", "--all", "@out"}, "out"},
        {"printing the sheet",
         {"export", "@song.luft", "--performance", "A", "--as", "sheet-pdf", "--out", "@sheet.pdf"},
         "sheet.pdf"},
        {"drawing the sheet's lines",
         {"export", "@song.luft", "--performance", "A", "--as", "sheet-pictures", "--out", "@rows"},
         "rows"},
        {"taking stills",
         {"export", "@song.luft", "--performance", "A", "--as", "stills", "--out", "@stills"},
         "stills"},
        {"writing the guide movie",
         {"guide", "@song.luft", "--performance", "A", "--out", "@g.mp4"},
         "g.mp4"},
        {"comparing", {"compare", "@song.luft", "A", "B", "--as", "pdf", "--out", "@ab.pdf"}, "ab.pdf"},
        {"writing two in step", {"compare", "@song.luft", "A", "B", "--in-step", "@ab.wav"}, "ab.wav"},
        {"setting profiles side by side",
         {"beside", "@song.luft", "--as", "html", "--out", "@beside.html"},
         "beside.html"},
        {"checking", {"check", "@song.luft"}},
        {"rescuing", {"check", "@song.luft", "--rescue", "@new.luft"}, "new.luft"},
        {"linking anew", {"performance", "@song.luft", "relink", "A", "@moved/a.mp4"}},
    };
    return all;
}

Room::Room() {
    scenes::write_sung(scenes::three_lines(test::runs(1, 4)), folder_ / "a.wav");
    const auto file = [&](const char* name) { return test::quoted(folder_ / name); };
    test::run("ffmpeg -nostdin -v error -i " + file("a.wav") +
              " -f lavfi -i testsrc=size=160x120:rate=25 -shortest " + file("a.mp4"));
    test::run("ffmpeg -nostdin -v error -i " + file("a.wav") + " -af atempo=0.9 " + file("b.wav"));
    fs::remove(folder_ / "a.wav");
    fs::create_directory(folder_ / "moved");
    fs::copy(folder_ / "a.mp4", folder_ / "moved/a.mp4");
    done(folder_, {"new", "@song.luft", "--title", "Ferry Song"});
    done(folder_, {"add", "@song.luft", "@a.mp4", "--label", "A"});
    done(folder_, {"add", "@song.luft", "@b.wav", "--label", "B", "--carry"});
    for (const char* label : {"A", "B"}) {
        done(folder_, {"moment", "@song.luft", "add", "--performance", label, "--from", "1", "--to", "3",
                       "--shade", "onset:balanced", "--remark", "Even."});
        done(folder_, {"script", "@song.luft", "draft", "--performance", label});
    }
}

const Room& room() {
    static const Room one;
    return one;
}

Waits::~Waits() {
    if (waits_.empty()) return;
    std::ranges::sort(waits_);
    std::cout << what_ << ": stopped " << waits_.size() << " times, after "
              << waits_[waits_.size() / 2].value() << " s in the middle and " << waits_.back().value()
              << " s at most\n";
}

Place::Place(const Room& room, Work work) : room_(room), work_(std::move(work)) {
    restore();
    before_ = folder_.names();
    contents_ = contents_of(folder_ / "song.luft");
}

Child Place::begin() const {
    std::vector<std::string> arguments = work_.arguments;
    for (std::string& argument : arguments)
        if (argument.starts_with('@')) argument = folder_ / argument.substr(1);
    return Child(LUFT_PROGRAM, arguments);
}

std::string Place::damage() const {
    if (contents_of(folder_ / "song.luft") != contents_) return "The project isn't as it was.";
    Child check(LUFT_PROGRAM, {"check", folder_ / "song.luft"});
    if (const Outcome outcome = check.wait(); outcome.status != 0) return outcome.out + outcome.err;
    for (const std::string& name : left_behind())
        return "'" + name + "' was left behind.";
    for (const auto& [name, size] : made()) {
        // Cairo numbers what it draws from the program's start on, so that the length of an SVG varies, and
        // of a page that holds one.
        const std::string end = name.ends_with(".svg")    ? "</svg>\n"
                                : name.ends_with(".html") ? "</html>\n"
                                                          : "";
        if (!end.empty() && test::read_all(folder_ / name).ends_with(end)) continue;
        const auto whole = whole_.find(name);
        // Without a whole one to compare it with, only a folder's files may be there.
        if (whole == whole_.end() ? name == work_.makes : whole->second != size)
            return "'" + name + "' is there, with " + std::to_string(size) + " bytes.";
    }
    return {};
}

std::vector<std::string> Place::left_behind() const {
    std::vector<std::string> names;
    for (const auto& [name, size] : made())
        if (!is_result(name)) names.push_back(name);
    return names;
}

void Place::restore() {
    for (const auto& entry : fs::directory_iterator(folder_.path()))
        fs::remove_all(entry.path());
    fs::copy(room_.folder().path(), folder_.path(), fs::copy_options::recursive);
}

Place::Sizes Place::made() const {
    Sizes sizes;
    for (const std::string& name : folder_.names())
        if (!std::ranges::binary_search(before_, name) && fs::is_regular_file(folder_ / name))
            sizes[name] = fs::file_size(folder_ / name);
    return sizes;
}

bool Place::is_result(const std::string& name) const {
    if (work_.makes.empty()) return false;
    const bool unfinished = name.find(".part-") != std::string::npos || name.ends_with(".luft-part");
    return !unfinished && (name == work_.makes || name.starts_with(work_.makes + "/"));
}

} // namespace luft::stop
