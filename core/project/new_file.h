// A project file in the making: it is filled beside its final name and gets that name when it is whole, so
// that a program that is killed meanwhile never leaves half a project there.
#pragma once

#include <filesystem>

namespace luft::project {

class NewFile {
  public:
    /// Makes an empty file beside `final_name`: "song.luft.part-XXXXXX". Throws Error(cannot_write) when it
    /// can't be made, when something exists under the final name, or when the journal of an unfinished edit
    /// lies there, which SQLite would take for the new file's.
    explicit NewFile(std::filesystem::path final_name);
    NewFile(const NewFile&) = delete;
    NewFile& operator=(const NewFile&) = delete;
    ~NewFile(); ///< removes it unless it was kept

    /// Where it is filled.
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }
    /// What may be done with it, as with `other`; without this call, what the process's mask leaves.
    void permit_as(const std::filesystem::path& other);

    /// Puts it on disk under its final name, or another one in that folder. Never replaces anything: throws
    /// Error(cannot_write) when something is there by now, or the disk refuses.
    void keep();
    void keep_as(const std::filesystem::path& name);

  private:
    std::filesystem::path final_, path_;
    bool kept_ = false;
};

} // namespace luft::project
