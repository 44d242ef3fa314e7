#include "project/rescue_source.h"

#include "base/error.h"
#include "project/database.h"
#include "project/file_header.h"

#include <cerrno>
#include <cstdlib>
#include <cstring>

namespace luft::project {
namespace {

namespace fs = std::filesystem;

fs::path journal_of(const fs::path& file) {
    return file.string() + "-journal";
}

/// True when a journal lies there that isn't just another program's, at work.
bool is_cut_off(const fs::path& damaged) {
    std::error_code none;
    const auto size = fs::file_size(journal_of(damaged), none);
    if (none || size == 0) return false;
    try {
        Database(damaged, Database::Mode::read).script("SELECT count(*) FROM sqlite_schema");
        return false;
    } catch (const Error& e) {
        if (e.fault() == Fault::busy) throw;
        return true; // only a writer can roll it back
    }
}

void roll_back(const fs::path& copy) {
    try {
        open_recovered(copy, Access::edit);
    } catch (const Error&) {
        // Too damaged for that; the pages are read as they are.
    }
}

} // namespace

RescueSource::RescueSource(const fs::path& damaged, const fs::path& fresh) : file_(damaged) {
    if (!is_cut_off(damaged)) return;
    std::string name = fresh.string() + ".part-XXXXXX";
    std::error_code refused(::mkdtemp(name.data()) ? 0 : errno, std::generic_category());
    if (!refused) {
        folder_ = name;
        file_ = folder_ / "damaged.luft";
        fs::copy_file(damaged, file_, refused);
    }
    if (!refused) fs::copy_file(journal_of(damaged), journal_of(file_), refused);
    if (!refused) fs::permissions(file_, fs::perms::owner_read | fs::perms::owner_write, refused);
    if (!refused) fs::permissions(journal_of(file_), fs::perms::owner_read | fs::perms::owner_write, refused);
    if (refused) {
        std::error_code ignored;
        if (!folder_.empty()) fs::remove_all(folder_, ignored);
        throw Error(Fault::cannot_write,
                    "The damaged project can't be copied to '" + fresh.parent_path().string() +
                        "': " + refused.message() + ".",
                    "Choose a folder where you may write and where there is room for it twice.");
    }
    roll_back(file_);
}

RescueSource::~RescueSource() {
    std::error_code ignored;
    if (!folder_.empty()) fs::remove_all(folder_, ignored);
}

} // namespace luft::project
