// Which files for the edit are to be written, and where.
#pragma once

#include <wx/checklst.h>
#include <wx/filepicker.h>
#include <wx/wx.h>

#include <filesystem>
#include <set>
#include <string>

namespace luft::desk {

class FilesDialog : public wxDialog {
  public:
    /// Offers a folder beside the project, and what was chosen the last time.
    FilesDialog(wxWindow* parent, const std::filesystem::path& project);

    [[nodiscard]] std::filesystem::path folder() const;
    /// Keys of the chosen formats.
    [[nodiscard]] std::set<std::string, std::less<>> formats() const;
    /// The choice, for the next time.
    void remember() const;

  private:
    wxDirPickerCtrl* folder_;
    wxCheckListBox* list_;
};

} // namespace luft::desk
