// Many recordings at once, some of them broken: the others come out as if each had been alone.
#include "faults/row.h"
#include "scenes/sung.h"
#include "tools/child.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>

#include <filesystem>

using namespace luft::test;

TEST_CASE("Of many recordings listened to at once, broken ones cost none of the others") {
    Row row(
        "load", "many recordings listened to at once, every third of them broken",
        "listen --into --jobs 4 with a third of the files cut short; the others compared byte for byte with "
        "what each gives alone");
    const Folder folder;
    // Two songs, so that it shows when one is told of the other.
    std::string bytes[2], alone[2];
    for (std::size_t song = 0; song < 2; ++song) {
        const auto file = folder / ("song" + std::to_string(song) + ".wav");
        luft::scenes::write_sung(luft::scenes::three_lines(1 + static_cast<int>(song)), file);
        bytes[song] = read_all(file);
        const Outcome outcome = Child(LUFT_PROGRAM, {"listen", file}).wait();
        REQUIRE(outcome.status == 0);
        alone[song] = outcome.out;
    }
    REQUIRE(alone[0] != alone[1]);
    const auto song_of = [](int i) { return static_cast<std::size_t>(i % 2); };
    std::vector<std::string> arguments{"listen"};
    const int files = runs(9, 120);
    for (int i = 0; i < files; ++i) {
        arguments.push_back(folder / (std::to_string(i) + ".wav"));
        write_all(arguments.back(), i % 3 == 1 ? bytes[0].substr(0, bytes[0].size() / 3) : bytes[song_of(i)]);
    }
    arguments.insert(arguments.end(), {"--into", folder / "heard", "--jobs", "4"});
    const Outcome outcome = Child(LUFT_PROGRAM, arguments).wait();
    row.must(outcome.status == 1, "the status doesn't say that some are broken");
    for (int i = 0; i < files; ++i) {
        row.run();
        const auto heard = folder / "heard" / (std::to_string(i) + ".json");
        if (i % 3 == 1)
            row.must(!std::filesystem::exists(heard), "something was written of a broken recording");
        else
            row.must(std::filesystem::exists(heard) && read_all(heard) == alone[song_of(i)],
                     "recording " + std::to_string(i) + " came out otherwise than alone");
    }
}
