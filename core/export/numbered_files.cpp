#include "export/numbered_files.h"

#include "base/error.h"

#include <charconv>
#include <system_error>
#include <vector>

namespace luft::exports {
namespace {

/// The number in a name of that kind; 0 for any other name.
std::size_t number_in(const std::string& name, std::string_view kind, std::string_view ending) {
    std::size_t number = 0;
    const std::size_t start = kind.size() + 1;
    if (name.size() <= start + ending.size()) return 0;
    std::from_chars(name.data() + start, name.data() + name.size() - ending.size(), number);
    return name == numbered(kind, number, ending) ? number : 0;
}

} // namespace

void make_folder(const std::filesystem::path& folder) {
    std::error_code fault;
    std::filesystem::create_directories(folder, fault);
    if (fault)
        throw Error(Fault::cannot_write, "'" + folder.string() + "' can't be made: " + fault.message() + ".");
}

std::string numbered(std::string_view kind, std::size_t number, std::string_view ending) {
    return std::string(kind) + (number < 10 ? "-0" : "-") + std::to_string(number) + std::string(ending);
}

void remove_numbered_after(const std::filesystem::path& folder, std::string_view kind, std::size_t last,
                           std::string_view ending) {
    std::error_code fault;
    std::vector<std::filesystem::path> old;
    for (std::filesystem::directory_iterator entry(folder, fault), end; !fault && entry != end;
         entry.increment(fault))
        if (number_in(entry->path().filename().string(), kind, ending) > last && !entry->is_directory(fault))
            old.push_back(entry->path());
    for (const auto& file : old)
        if (!fault) std::filesystem::remove(file, fault);
    if (fault)
        throw Error(Fault::cannot_write,
                    "'" + folder.string() + "' still holds files of an earlier run: " + fault.message() + ".",
                    "Remove them by hand.");
}

} // namespace luft::exports
