// Small dialogs: the piece, the vocabulary, finding, about.
#include "base/text.h"
#include "desk/frame.h"
#include "desk/icon.h"
#include "desk/piece_dialog.h"
#include "desk/script_settings_dialog.h"
#include "desk/text.h"
#include "desk/vocabulary_dialog.h"
#include "desk/work/sung_words.h"
#include "files/version.h"
#include "sheet/layout.h"

#include <wx/aboutdlg.h>
#include <wx/choicdlg.h>
#include <wx/textdlg.h>

#include <algorithm>
#include <cctype>

namespace luft::desk {

void Frame::edit_piece() {
    PieceDialog dialog(this, session_.source().piece,
                       session_.shown() ? &session_.source().performance : nullptr);
    if (dialog.ShowModal() != wxID_OK) return;
    set_piece(session_, dialog.piece());
    if (const auto notes = dialog.performance())
        session_.edit([&](project::Project& project) {
            project.set_performance_notes(notes->id, notes->performer, notes->source, notes->permission);
        });
}

void Frame::edit_vocabulary() {
    VocabularyDialog(this, session_, [this](const std::function<void()>& what) {
        guarded(what);
    }).ShowModal();
}

void Frame::set_script_limits() {
    const auto before = session_.project().script_settings();
    ScriptSettingsDialog dialog(this, before);
    if (dialog.ShowModal() != wxID_OK) return;
    session_.edit([&](project::Project& project) { project.set_script_settings(dialog.settings()); });
}

void Frame::find_moment() {
    const auto& moments = session_.source().moments;
    if (moments.empty()) return say("There are no moments yet to find anything in.");
    wxTextEntryDialog ask(this, "A word of the remark, a shade, a verdict or a drill", "Find moments");
    if (ask.ShowModal() != wxID_OK) return;
    const wxString wanted = ask.GetValue().Lower();
    wxArrayString lines;
    std::vector<project::MomentId> found;
    for (const auto& moment : moments) {
        const auto words = sheet::card_words(moment, session_.source().vocabulary);
        const char* verdicts[] = {"strength", "watch", "explain"};
        const wxString verdict(verdicts[static_cast<int>(moment.verdict)]);
        const wxString line =
            shown(clock_text(moment.span.start) + "   " + words.title + "   " + words.remark);
        if ((line + " " + verdict + " " + shown(words.drill)).Lower().Find(wanted) == wxNOT_FOUND) continue;
        lines.Add(line.length() > 110 ? line.Left(108) + shown("…") : line);
        found.push_back(moment.id);
    }
    if (found.empty()) return say("No moment holds '" + typed(ask.GetValue()) + "'.");
    if (found.size() == 1) return select_and_reveal(found.front());
    wxSingleChoiceDialog choose(this, wxString::Format("%zu moments", found.size()), "Find moments", lines);
    choose.SetSize(FromDIP(wxSize(760, 420)));
    choose.CentreOnParent();
    if (choose.ShowModal() == wxID_OK)
        select_and_reveal(found[static_cast<std::size_t>(choose.GetSelection())]);
}

void Frame::about() {
    wxAboutDialogInfo info;
    info.SetIcon(program_icons().GetIcon(64));
    info.SetName("Luftpause");
    info.SetVersion(shown(files::version()));
    info.SetDescription("Finds the breaths in a recorded performance, and helps a voice teacher\n"
                        "decide where to stop and what to say there.\n\n"
                        "It estimates from sound and diagnoses nothing. Hoarseness that lasts\n"
                        "belongs to a doctor. Quoting a recording is your responsibility\n"
                        "under the law where you are.");
    info.SetLicence("GNU General Public License, version 3 or later");
    wxAboutBox(info, this);
}

} // namespace luft::desk
