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
    luft::scenes::write_sung(luft::scenes::three_lines(), folder / "whole.wav");
    const std::string bytes = read_all(folder / "whole.wav");
    const Outcome alone = Child(LUFT_PROGRAM, {"listen", folder / "whole.wav"}).wait();
    REQUIRE(alone.status == 0);
    std::vector<std::string> arguments{"listen"};
    const int files = runs(9, 120);
    for (int i = 0; i < files; ++i) {
        arguments.push_back(folder / (std::to_string(i) + ".wav"));
        write_all(arguments.back(), i % 3 == 1 ? bytes.substr(0, bytes.size() / 3) : bytes);
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
            row.must(std::filesystem::exists(heard) && read_all(heard) == alone.out,
                     "recording " + std::to_string(i) + " came out otherwise than alone");
    }
}
