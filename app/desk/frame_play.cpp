// Sound, playhead and picture.
#include "base/text.h"
#include "desk/frame.h"
#include "desk/text.h"
#include "desk/work/edits.h"

#include <wx/filedlg.h>
#include <wx/filename.h>

#include <algorithm>
#include <iterator>

namespace luft::desk {
namespace {

constexpr Seconds kLittle{1};
constexpr Seconds kRunUp{0.3}; ///< heard before a selection, so that its start isn't cut off

} // namespace

void Frame::open_media() {
    versions_->release();
    before_versions_ = Seconds(0);
    playing_.close();
    picture_->open(nullptr, "");
    media_missing_ = false;
    transport_->show_playing(false);
    transport_->enable(false);
    transport_->show_note("");
    show_no_loop();
    if (!session_.shown()) transport_->show_time(Seconds(0), Seconds(0));
    if (!session_.shown()) return;
    const auto& performance = session_.source().performance;
    try {
        playing_.open(session_);
        if (performance.facts.has_video)
            picture_->open(media::open_pictures(session_.project().media(performance)), "");
        else
            picture_->open(nullptr, "This performance has sound only.");
        transport_->enable(true);
        show_sound_note();
    } catch (const Error& error) {
        media_missing_ = true;
        picture_->open(nullptr, "The recording isn't there.");
        transport_->show_note(shown(error.what()));
    }
}

void Frame::show_no_loop() {
    transport_->show_loop(false);
    GetMenuBar()->Check(static_cast<int>(Do::loop), false);
}

void Frame::show_sound_note() {
    const wxString whole = shown(playing_.note());
    transport_->show_note(playing_.silent() ? wxString("No sound device: plays silently") : whole, whole);
}

void Frame::tick() {
    if (!session_.shown()) return;
    if (on_page(versions_)) return tick_versions();
    playing_.look();
    const Seconds now = playing_.position();
    if (play_until_ && playing_.playing() && now >= *play_until_) playing_.pause();
    const bool playing = playing_.playing();
    if (!playing) play_until_.reset();
    sheet_->set_playhead(now, playing);
    transport_->show_time(now, session_.source().performance.facts.duration);
    if (was_playing_ && !playing) show_sound_note();
    if (was_playing_ != playing) transport_->show_playing(playing);
    was_playing_ = playing;
    picture_->show_at(now);
}

void Frame::go_to(Seconds time, bool reveal) {
    play_until_.reset();
    const Seconds end = session_.source().performance.facts.duration;
    playing_.go_to(std::clamp(time, Seconds(0), end));
    if (reveal && !playing_.playing()) sheet_->reveal(playing_.position());
}

Span Frame::loop_span() const {
    if (const auto* mark = session_.selected_mark(); mark && mark->span().length() > Seconds(0.2))
        return mark->span();
    if (const auto* moment = session_.selected_moment()) return moment->span;
    const auto* phrase = phrase_at(session_.source(), playing_.position());
    return phrase ? phrase->span() : Span{Seconds(0), session_.source().performance.facts.duration};
}

void Frame::play_span(Span span) {
    if (!playing_.can_play()) return;
    guarded([&] {
        playing_.play(std::max(Seconds(0), span.start - kRunUp));
        if (!playing_.loop()) play_until_ = span.end + kRunUp;
        sheet_->reveal(span.start);
    });
}

void Frame::choose_tone(ToneKind tone) {
    on_page(versions_) ? playing_.keep_tone(tone) : playing_.set_tone(tone, session_);
}

void Frame::play(Do id) {
    if (id == Do::tone_off) return choose_tone(ToneKind::off);
    if (id == Do::tone_sung) return choose_tone(ToneKind::sung);
    if (id == Do::tone_ideal) return choose_tone(ToneKind::ideal);
    if (!playing_.can_play()) {
        if (media_missing_ && id == Do::play) offer_to_find_recording();
        return;
    }
    switch (id) {
    case Do::play:
        play_until_.reset();
        playing_.playing() ? playing_.pause() : playing_.play(playing_.position());
        show_sound_note();
        return;
    case Do::play_selection:
        if (playing_.loop()) playing_.set_loop(loop_span());
        return play_span(loop_span());
    case Do::loop: {
        const bool on = !playing_.loop().has_value();
        playing_.set_loop(on ? std::optional(loop_span()) : std::nullopt);
        if (on && !playing_.loop()->contains(playing_.position())) go_to(playing_.loop()->start);
        transport_->show_loop(on);
        GetMenuBar()->Check(static_cast<int>(Do::loop), on);
        return;
    }
    case Do::slower:
    case Do::faster: {
        const auto at = std::ranges::find(kSpeeds, playing_.speed());
        if (id == Do::slower && at != std::begin(kSpeeds)) set_speed(*(at - 1));
        if (id == Do::faster && at + 1 < std::end(kSpeeds)) set_speed(*(at + 1));
        return;
    }
    case Do::full_speed:
        return set_speed(100);
    case Do::back:
        return go_to(playing_.position() - kLittle);
    case Do::forward:
        return go_to(playing_.position() + kLittle);
    case Do::frame_back:
        return step_picture(-1);
    case Do::frame_forward:
        return step_picture(1);
    default:
        return;
    }
}

void Frame::set_speed(int percent) {
    playing_.set_speed(percent);
    transport_->show_speed(percent);
}

void Frame::step_picture(int frames) {
    const auto& facts = session_.source().performance.facts;
    if (facts.frame_rate_num <= 0) return;
    if (playing_.playing()) playing_.pause();
    const Seconds one(static_cast<double>(facts.frame_rate_den) / static_cast<double>(facts.frame_rate_num));
    go_to(playing_.position() + one * frames);
}

void Frame::save_still() {
    const auto& performance = session_.source().performance;
    wxString name = shown(performance.label + "-" + clock_text(picture_->shown_time()));
    name.Replace(":", ".");
    wxFileDialog dialog(this, "Save the picture",
                        wxFileName(shown(session_.project().file().string())).GetPath(), name + ".png",
                        "PNG picture (*.png)|*.png|JPEG picture (*.jpg)|*.jpg",
                        wxFD_SAVE | wxFD_OVERWRITE_PROMPT);
    if (dialog.ShowModal() != wxID_OK) return;
    picture_->save(typed(dialog.GetPath()));
    say("The picture is saved as " + typed(dialog.GetFilename()) + ".");
}

} // namespace luft::desk
