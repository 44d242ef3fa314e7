// luftpause-desk: the window.
#include "desk/frame.h"
#include "desk/recently_used.h"
#include "desk/text.h"
#include "files/version.h"

#include <wx/cmdline.h>
#include <wx/config.h>
#include <wx/fileconf.h>
#include <wx/filename.h>
#include <wx/log.h>
#include <wx/stdpaths.h>
#include <wx/wx.h>

#include <algorithm>
#include <clocale>
#include <cstdio>
#include <span>
#include <string_view>

namespace luft::desk {
namespace {

class App : public wxApp {
  public:
    bool OnInit() override {
        // Words and file names are UTF-8 here, whatever the surroundings say; numbers keep their point.
        if (!std::setlocale(LC_CTYPE, "C.UTF-8")) std::setlocale(LC_CTYPE, "");
        SetAppName("luftpause");
        SetVendorName("luftpause");
        wxStandardPaths::Get().SetFileLayout(wxStandardPaths::FileLayout_XDG);
        if (!wxApp::OnInit()) return false;
        wxInitAllImageHandlers();
        // What the window library complains of goes to the terminal, not into boxes over the work.
        delete wxLog::SetActiveTarget(new wxLogStderr);
        // In the user's configuration folder, the only place that the window writes to unasked.
        auto& paths = wxStandardPaths::Get();
        wxFileName::Mkdir(paths.GetUserConfigDir(), wxS_DIR_DEFAULT, wxPATH_MKDIR_FULL);
        wxConfigBase::Set(new wxFileConfig(
            "luftpause-desk", wxEmptyString,
            paths.GetUserConfigDir() + "/" +
                paths.MakeConfigFileName("luftpause-desk", wxStandardPaths::ConfigFileConv_Ext),
            wxEmptyString, wxCONFIG_USE_LOCAL_FILE));
        keep_recently_used_in(typed(paths.GetUserConfigDir() + "/luftpause-desk.recent"));
        auto* frame = new Frame;
        frame->Show();
        if (!file_.empty()) frame->open_file(file_);
        if (measured_ > 0) frame->CallAfter([frame, n = measured_] { frame->measure(static_cast<int>(n)); });
        return true;
    }

    void OnInitCmdLine(wxCmdLineParser& parser) override {
        wxApp::OnInitCmdLine(parser);
        parser.AddParam("project or recording", wxCMD_LINE_VAL_STRING, wxCMD_LINE_PARAM_OPTIONAL);
        parser.AddLongSwitch("version", "Print the version and end"); // main answers it
        parser.AddLongOption("measure", "Paint the sheet so many times, print the times and end",
                             wxCMD_LINE_VAL_NUMBER);
        parser.SetLogo("luftpause-desk: the window of Luftpause");
    }

    bool OnCmdLineParsed(wxCmdLineParser& parser) override {
        parser.Found("measure", &measured_);
        if (parser.GetParamCount() > 0) file_ = parser.GetParam(0);
        return wxApp::OnCmdLineParsed(parser);
    }

  private:
    wxString file_;
    long measured_ = 0;
};

} // namespace
} // namespace luft::desk

wxIMPLEMENT_APP_NO_MAIN(luft::desk::App);

int main(int argc, char** argv) {
    // Without a screen, too.
    const std::span arguments(argv, static_cast<std::size_t>(argc));
    if (std::ranges::any_of(arguments.subspan(1),
                            [](const char* one) { return std::string_view(one) == "--version"; }))
        return std::puts(("luftpause-desk " + luft::files::version()).c_str()) < 0 ? 1 : 0;
    return wxEntry(argc, argv);
}
