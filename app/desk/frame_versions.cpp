// The page of two performances in the window: how it hangs together with the rest.
#include "base/text.h"
#include "desk/frame.h"
#include "desk/text.h"
#include "files/comparison_formats.h"

#include <wx/filedlg.h>
#include <wx/filename.h>

namespace luft::desk {
namespace {

const char* const kStopped = "Stopped before it was done.";

} // namespace

void Frame::make_versions() {
    versions_ =
        new VersionsView(book_, session_, playing_,
                         {[this](Do id) { run(id); }, [this](Job::Match task) { begin(std::move(task)); },
                          [this](const std::function<void()>& what) { guarded(what); },
                          [this](const std::string& words) { transport_->show_note(shown(words)); },
                          [this] { update_version_menu(); }, [this] { focus_page(); }});
    book_->AddPage(versions_, "");
}

void Frame::begin_versions() {
    if (playing_.playing()) playing_.pause();
    playing_.set_loop(std::nullopt);
    show_no_loop();
    play_until_.reset();
    before_versions_ = playing_.position();
}

void Frame::leave_versions() {
    const bool borrowed = versions_->release();
    show_no_loop();
    if (!session_.shown()) return;
    if (!borrowed) return playing_.set_tone(playing_.tone(), session_); // marks may have changed meanwhile
    transport_->show_note("");
    guarded([&] {
        playing_.open(session_);
        playing_.go_to(before_versions_);
    });
}

void Frame::tick_versions() {
    versions_->tick();
    const bool playing = versions_->playing();
    transport_->show_time(versions_->position(), versions_->duration());
    if (was_playing_ != playing) transport_->show_playing(playing);
    was_playing_ = playing;
}

void Frame::take_comparison(const Job::Match& work, const Job::Outcome& outcome) {
    if (outcome.matched) {
        versions_->take(outcome.matched);
        if (!versions_->waits()) drop_comparisons(waiting_); // what was asked for twice is there now
        return;
    }
    versions_->not_done(work, outcome.fault ? outcome.fault->what() : kStopped);
    if (outcome.fault) say(*outcome.fault);
}

void Frame::leave_comparisons() {
    for (const auto& work : drop_comparisons(waiting_))
        versions_->not_done(work, kStopped);
}

void Frame::write_report() {
    const Matched* matched = versions_->result();
    if (!matched) return;
    const wxFileName project(shown(session_.project().file().string()));
    const auto& [a, b] = std::tie(matched->comparison.a, matched->comparison.b);
    wxFileDialog dialog(
        this, "Write a report on the two", project.GetPath(),
        shown(files::file_stem(a.label) + "-" + files::file_stem(b.label) + "-compare.html"),
        "Page (*.html)|*.html|PDF (*.pdf)|*.pdf|Text (*.txt)|*.txt|For other programs (*.json)|*.json",
        wxFD_SAVE | wxFD_OVERWRITE_PROMPT);
    if (dialog.ShowModal() != wxID_OK) return;
    const std::filesystem::path file = typed(dialog.GetPath());
    files::ComparisonMaterial material(session_.project(), matched->comparison);
    const wxBusyCursor busy;
    files::write(files::comparison_format_for(file), material, file, {});
    say("The report is written to " + file.filename().string() + ".");
}

void Frame::update_version_menu() {
    auto& bar = *GetMenuBar();
    const bool here = on_page(versions_);
    transport_->enable_loop(!here); // spans of the performance that is shown
    for (const Do id : {Do::play_upper, Do::play_lower, Do::play_in_turn, Do::play_both, Do::moment_other,
                        Do::pin_places, Do::unpin, Do::swap_versions, Do::as_sung, Do::differences_by_time,
                        Do::differences_telling, Do::write_report})
        bar.Enable(static_cast<int>(id), here && versions_->can(id));
    if (!here) return;
    bar.Enable(static_cast<int>(Do::make_moment), versions_->can(Do::make_moment));
    bar.Enable(static_cast<int>(Do::drop), versions_->can(Do::drop));
    bar.Check(static_cast<int>(Do::as_sung), versions_->shows_as_sung());
    bar.Check(static_cast<int>(versions_->tells_first() ? Do::differences_telling : Do::differences_by_time),
              true);
    for (const Do id :
         {Do::keep, Do::change_kind, Do::verdict_strength, Do::verdict_watch, Do::verdict_explain,
          Do::add_shade, Do::write_remark, Do::set_breath, Do::set_switch, Do::make_stop, Do::split_phrase,
          Do::join_phrase, Do::loop, Do::next_proposal, Do::frame_back, Do::frame_forward})
        bar.Enable(static_cast<int>(id), false);
}

} // namespace luft::desk
