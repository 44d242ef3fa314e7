// Files that earlier versions of the program have written.
#include "compare.h"
#include "old_versions.h"
#include "project/migrate.h"
#include "project/schema.h"

using namespace desk;

namespace {

/// A file of an earlier version, made as that version made it.
fs::path made_by_version(int version, const Folder& folder) {
    const fs::path file = folder / "old.luft";
    for (const char* part : {kVersion1Derived, kVersion1Edited, kVersion1Journal, kVersion1Contents})
        execute(file, part);
    if (version >= 2) execute(file, kVersion2Added);
    return file;
}

std::string schema_of(const fs::path& file) {
    Database database(file, Database::Mode::read);
    std::string all;
    Statement rows = database.prepare("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name");
    while (rows.step())
        all += rows.text(0) + "\n";
    return all;
}

} // namespace

TEST_CASE("a project of an earlier version is copied, brought up to date and sound; its journal goes on") {
    const int version = GENERATE(1, 2);
    INFO(version);
    Folder folder;
    const fs::path file = made_by_version(version, folder);
    const std::string before = contents(file);
    CHECK(fault_of([&] { Project::open(file, Access::read); }) == Fault::cannot_write);
    {
        Project project = Project::open(file);
        CHECK(project.check().empty());
        CHECK(project.piece().words == "One line\nand another");
        const auto a = project.performance("A").id;
        CHECK(project.marks(a).size() == 1);
        CHECK(project.sung_words(a).size() == (version == 1 ? 0 : 1));
        CHECK(project.moments(a).empty());
        project.set_sung_words(a, {{{}, {}, "Other", false, Seconds(0.1), false}});
        project.undo();
        CHECK(project.undo() == "keep phrase at 0:00.1"); // an edit of version 1
        CHECK(project.marks(a)[0].state == MarkState::proposed);
    }
    const fs::path copy = folder / ("old.before-v" + std::to_string(kVersionWritten) + ".luft");
    REQUIRE(fs::exists(copy));
    CHECK((contents(copy) == before));
    // As if it had been made today, to the letter.
    Sample fresh;
    CHECK(schema_of(file) == schema_of(fresh.file));
}
