// Projects, recordings and listening in the background.
#include "base/text.h"
#include "desk/files_dialog.h"
#include "desk/frame.h"
#include "desk/recording_dialog.h"
#include "desk/text.h"
#include "sheet/pages.h"

#include <wx/filedlg.h>
#include <wx/filename.h>
#include <wx/stdpaths.h>

#include <algorithm>
#include <cctype>
#include <fstream>
#include <sstream>

namespace luft::desk {
namespace {

const char* const kMedia =
    "Recordings|*.mp4;*.m4v;*.mov;*.mkv;*.webm;*.avi;*.mpg;*.mpeg;*.ts;*.wav;*.flac;*.mp3;*.m4a;"
    "*.aac;*.ogg;*.opus;*.oga;*.aif;*.aiff;*.wma|All files|*";

/// The sample's folder beside the program: in the build tree or where it is installed; empty for none.
wxString sample_folder() {
    const wxFileName program(wxStandardPaths::Get().GetExecutablePath());
    for (const wxString& place :
         {wxString("../../sample-project"), wxString("../share/luftpause/sample-project")}) {
        wxFileName folder = wxFileName::DirName(program.GetPath() + "/" + place);
        folder.Normalize(wxPATH_NORM_DOTS | wxPATH_NORM_ABSOLUTE);
        if (folder.DirExists() && wxFileName(folder.GetPath() + "/words.txt").FileExists())
            return folder.GetPath();
    }
    return {};
}

/// "12 s", "3 min": no estimate is better than that.
wxString roughly(Seconds time) {
    const int seconds = static_cast<int>(time.value() + 1);
    return seconds < 90 ? wxString::Format("%d s", seconds) : wxString::Format("%d min", (seconds + 30) / 60);
}

std::string whole_text(const wxString& file) {
    std::ifstream stream(typed(file), std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    return valid_utf8(text.str());
}

} // namespace

void Frame::open_file(const wxString& file) {
    const bool project = wxFileName(file).GetExt().Lower() == "luft";
    if (project) return open_project(file);
    guarded([&] {
        session_.is_open() && !session_.read_only() ? add_performance(file) : new_from_recording(file);
    });
}

void Frame::ask_and(bool new_project) {
    wxFileDialog dialog(this, "Choose a recording", "", "", kMedia, wxFD_OPEN | wxFD_FILE_MUST_EXIST);
    if (dialog.ShowModal() != wxID_OK) return;
    new_project ? new_from_recording(dialog.GetPath()) : add_performance(dialog.GetPath());
}

std::string Frame::unfinished() const {
    if (std::ranges::any_of(waiting_, [](const auto& task) { return !is_comparison(task); }))
        return "There is more to be done in the background";
    if (!job_ || job_->comparison()) return {}; // nothing is lost by it
    return job_->writes_files() ? "Files are being written" : "A recording is being listened to";
}

bool Frame::may_stop_work() {
    const std::string work = unfinished();
    if (work.empty()) return true;
    wxMessageDialog ask(this, work + ". Stop that and close the window?", "Close",
                        wxYES_NO | wxNO_DEFAULT | wxICON_QUESTION);
    ask.SetYesNoLabels("Stop and close", "Keep working");
    return ask.ShowModal() == wxID_YES;
}

bool Frame::may_open_another() {
    if (const std::string work = unfinished(); !work.empty()) {
        say(work + "; wait until that is done, or stop it.");
        return false;
    }
    if (!may_leave()) return false;
    leave_comparisons();
    if (job_ && job_->comparison()) { // nothing is lost by it
        const Job::Match work = *job_->comparison();
        job_.reset();
        take_comparison(work, {});
    }
    look_at_job();
    return true;
}

void Frame::new_from_recording(const wxString& media) {
    if (!may_open_another()) return;
    RecordingDialog dialog(this, media, true);
    if (dialog.ShowModal() != wxID_OK) return;
    session_.create(dialog.project_file(), dialog.piece());
    remember(shown(dialog.project_file().string()));
    begin(dialog.recording());
}

void Frame::add_performance(const wxString& media) {
    RecordingDialog dialog(this, media, false);
    if (dialog.ShowModal() == wxID_OK) begin(dialog.recording());
}

void Frame::open_project(const wxString& file) {
    if (!may_open_another()) return;
    guarded([&] {
        session_.open(typed(file));
        remember(file);
    });
}

void Frame::save_copy() {
    const wxFileName project(shown(session_.project().file().string()));
    wxFileDialog dialog(this, "Save a copy", project.GetPath(), project.GetName() + "-copy.luft",
                        "Luftpause projects (*.luft)|*.luft", wxFD_SAVE);
    if (dialog.ShowModal() != wxID_OK) return;
    session_.project().save_copy(typed(dialog.GetPath()));
    // Whose own file is gone goes on with the copy: no edit would be taken otherwise.
    if (!project.FileExists()) return open_project(dialog.GetPath());
    say("A copy is saved as " + typed(dialog.GetFilename()) + ".");
}

void Frame::close_project() {
    if (may_open_another()) session_.close();
}

void Frame::open_sample() {
    if (!may_open_another()) return;
    const wxString from = sample_folder();
    if (from.empty())
        return say("The sample isn't here: it comes with the program's sources.", wxICON_WARNING);
    wxDirDialog dialog(this, "Where may the copy of the sample go?",
                       wxStandardPaths::Get().GetDocumentsDir());
    if (dialog.ShowModal() != wxID_OK) return;
    const wxString to = dialog.GetPath();
    const wxString file = to + "/over-water.luft";
    if (wxFileExists(file)) return open_project(file);
    for (const char* name : {"over-water-vasslow.mp4", "over-water-marnik.mkv"})
        if (!wxCopyFile(from + "/media/" + name, to + "/" + name, false) && !wxFileExists(to + "/" + name))
            throw Error(Fault::cannot_write, "The sample can't be copied there.", "Choose another folder.");
    project::Piece piece;
    piece.title = "Over Water";
    piece.writer = "Ilse Farrow";
    piece.words = whole_text(from + "/words.txt");
    session_.create(typed(file), piece);
    remember(file);
    for (const auto& [label, singer, ending] :
         {std::tuple("vasslow", "Orrin Vasslow", "mp4"), std::tuple("marnik", "Pella Marnik", "mkv")}) {
        intake::Recording r;
        r.media = typed(to + "/over-water-" + label + "." + ending);
        r.details.label = label;
        r.details.performer = singer;
        r.details.source = "a studio session that never was";
        r.details.permission = "CC0 1.0";
        begin(r);
    }
}

void Frame::remember(const wxString& file) {
    recent_.AddFileToHistory(wxFileName(file).GetAbsolutePath());
    save_layout();
}

void Frame::begin(Job::Task task) {
    if (is_comparison(task)) drop_comparisons(waiting_); // only the last one asked for is looked at
    waiting_.push_back(std::move(task));
    if (!job_) look_at_job();
    job_timer_.Start(200);
}

void Frame::leave_waiting() {
    leave_comparisons();
    waiting_.clear();
}

void Frame::stop_job() {
    leave_waiting();
    if (job_) job_->stop();
}

void Frame::look_at_job() {
    if (job_) {
        const Job::State state = job_->state();
        std::string doing = state.doing.empty() ? "listening" : state.doing;
        doing[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(doing[0])));
        wxString words = shown(doing);
        if (state.left) words += ", about " + roughly(*state.left) + " left";
        job_text_->SetLabelText(words);
        job_gauge_->SetValue(static_cast<int>(state.done * 1000));
        if (!state.finished) return;
        const Job::Outcome outcome = job_->outcome();
        const bool wrote = job_->writes_files();
        const auto compared = job_->comparison() ? std::optional(*job_->comparison()) : std::nullopt;
        job_.reset();
        if (compared)
            guarded([&] { take_comparison(*compared, outcome); });
        else
            guarded([&] {
                const auto before = session_.shown();
                session_.reload();
                if (outcome.added) {
                    if (media_missing_) open_media();
                    tell_of(*outcome.added, !before || before == outcome.added->performance.id);
                }
                if (outcome.written) tell_of(*outcome.written);
                if (outcome.fault) say(*outcome.fault);
                if (!outcome.added && !outcome.written && !outcome.fault)
                    say(wrote ? "Stopped. What was written until then is whole; the rest is missing."
                              : "Stopped. Nothing was changed.");
            });
    }
    if (!job_ && !waiting_.empty() && session_.is_open()) {
        job_ = std::make_unique<Job>(session_.project().file(), std::move(waiting_.front()));
        waiting_.pop_front();
    }
    job_bar_->Show(job_ != nullptr);
    say_when_empty();
    Layout();
    if (!job_) job_timer_.Stop();
}

void Frame::tell_of(const intake::Added& added, bool shown_already) {
    if (!added.heard) return;
    const auto& found = added.heard->analysis;
    const std::string numbers = std::to_string(found.phrases.size()) + " phrases, " +
                                std::to_string(found.breaths.size()) + " breaths and " +
                                std::to_string(found.notes.size()) + " notes";
    ready_ = added.performance.id;
    if (shown_already)
        return say("Found " + numbers + ". All are proposals: press N to go through them, or just listen.");
    // Whoever works on another performance meanwhile isn't torn away from it.
    say("'" + added.performance.label + "' is ready: " + numbers + ".");
    notice_->AddButton(wxID_FORWARD, "Show it");
    notice_->AddButton(wxID_CLOSE, "Not now");
}

void Frame::show_ready() {
    notice_->Dismiss();
    guarded([&] {
        if (ready_ && may_leave()) session_.show(*ready_);
    });
    focus_page();
}

void Frame::print_sheet() {
    const wxFileName project(shown(session_.project().file().string()));
    wxFileDialog dialog(this, "Print the sheet to PDF", project.GetPath(), project.GetName() + "-sheet.pdf",
                        "PDF (*.pdf)|*.pdf", wxFD_SAVE | wxFD_OVERWRITE_PROMPT);
    if (dialog.ShowModal() != wxID_OK) return;
    const int pages = sheet::write_pdf(session_.source(), typed(dialog.GetPath()));
    say("The sheet is printed to " + typed(dialog.GetFilename()) + ", " + std::to_string(pages) +
        (pages == 1 ? " page." : " pages."));
}

void Frame::write_files() {
    script_->store();
    FilesDialog dialog(this, session_.project().file());
    if (dialog.ShowModal() != wxID_OK) return;
    dialog.remember();
    begin(Job::Files{*session_.shown(), dialog.folder(), dialog.formats()});
}

void Frame::tell_of(const files::Written& written) {
    if (written.files.empty() && written.faults.empty())
        return say("Nothing was written: no kind of file was chosen.");
    std::string words =
        "Wrote " + std::to_string(written.files.size()) + (written.files.size() == 1 ? " file." : " files.");
    for (const auto& note : written.notes)
        words += " " + note;
    if (!written.faults.empty()) words += " " + written.missing();
    say(words, written.faults.empty() ? wxICON_INFORMATION : wxICON_WARNING);
}

void Frame::offer_to_find_recording() {
    say("The recording '" + session_.source().performance.media.path +
            "' isn't where it was, so it can't be played. Everything you marked is here.",
        wxICON_WARNING);
    notice_->AddButton(wxID_FIND, shown("Find it…"));
    notice_->AddButton(wxID_CLOSE, "Not now");
}

void Frame::find_recording() {
    notice_->Dismiss();
    wxFileDialog dialog(this, "Where is the recording now?", "", "", kMedia,
                        wxFD_OPEN | wxFD_FILE_MUST_EXIST);
    if (!session_.shown() || dialog.ShowModal() != wxID_OK) return;
    guarded([&] {
        session_.edit(
            [&](project::Project& project) { project.relink(*session_.shown(), typed(dialog.GetPath())); });
        open_media();
    });
    focus_page();
}

} // namespace luft::desk
