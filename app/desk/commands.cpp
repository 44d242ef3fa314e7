#include "desk/commands.h"

#include <wx/accel.h>

#include <algorithm>
#include <array>
#include <cstring>

namespace luft::desk {
namespace {

using Kind = Command::Kind;

constexpr std::array kAll{
    Command{Do::new_recording, "&File", "&New from a recording…", "Ctrl+N",
            "Bring in a recording and listen to it"},
    Command{Do::open_project, "&File", "&Open a project…", "Ctrl+O", "Go on with a project"},
    Command{Do::open_sample, "&File", "Look at the &sample", "", "A copy of the invented sample song"},
    Command{Do::save_copy, "&File", "Save a c&opy…", "Ctrl+Shift+S",
            "Another project with all that is in this one, its history too", Kind::plain, true},
    Command{Do::close_project, "&File", "&Close the project", "Ctrl+W", "Everything is kept already"},
    Command{Do::add_performance, "&File", "&Add a performance…", "Ctrl+Shift+N",
            "Another recording of the same piece", Kind::plain, true},
    Command{Do::listen_again, "&File", "&Listen again", "",
            "Detect anew; what you kept, dropped or moved stays"},
    Command{Do::print_sheet, "&File", "&Print the sheet to PDF…", "Ctrl+P", "The whole song on A4 pages",
            Kind::plain, true},
    Command{Do::quit, "&File", "&Quit", "Ctrl+Q", "Everything is kept already", Kind::plain, true},

    Command{Do::undo, "&Edit", "&Undo", "Ctrl+Z", "Take back the last edit"},
    Command{Do::redo, "&Edit", "&Redo", "Ctrl+Y", "Make the undone edit again"},
    Command{Do::keep, "&Edit", "&Keep", "K", "Keep what is selected", Kind::plain, true},
    Command{Do::drop, "&Edit", "&Drop", "Delete",
            "Drop what is selected; listening again won't bring it back"},
    Command{Do::change_kind, "&Edit", "&Change the kind", "C",
            "Breath heard or inferred, switch up or down, onset of a note"},
    Command{Do::split_phrase, "&Edit", "&Split the phrase here", "P", "At the playhead"},
    Command{Do::join_phrase, "&Edit", "&Join with the next phrase", "J", "Two phrases become one"},
    Command{Do::piece_notes, "&Edit", "About this &piece…", "", "Title, performer, source, permission",
            Kind::plain, true},
    Command{Do::spread_words, "&Edit", "Spread the &words over the notes", "",
            "The piece's words under the line; those that you have placed stay"},
    Command{Do::vocabulary, "&Edit", "Tag &vocabulary…", "", "Facets and shades, and your own"},

    Command{Do::set_breath, "&Mark", "Set a &breath", "B", "At the playhead, also while it plays"},
    Command{Do::set_switch, "&Mark", "Set a register s&witch", "W", "At the playhead, also while it plays"},
    Command{Do::make_moment, "&Mark", "Make a &moment", "M",
            "Over the selection or the last seconds heard; or drag over the ribbon"},
    Command{Do::make_stop, "&Mark", "Put a &stop into the script", "S",
            "Playback will halt here for your words"},
    Command{Do::verdict_strength, "&Mark", "Verdict: s&trength", "1", "Of the selected moment", Kind::plain,
            true},
    Command{Do::verdict_watch, "&Mark", "Verdict: w&atch", "2", "Of the selected moment"},
    Command{Do::verdict_explain, "&Mark", "Verdict: &explain", "3", "Of the selected moment"},
    Command{Do::add_shade, "&Mark", "Add a s&hade", "T", "Type a few letters, then Enter"},
    Command{Do::write_remark, "&Mark", "Write the &remark", "E", "In your words"},

    Command{Do::next_proposal, "&Review", "&Next proposal", "N", "Go through what is only proposed"},
    Command{Do::previous_mark, "&Review", "Mark &before", "Left", "Select the mark or moment before"},
    Command{Do::next_mark, "&Review", "Mark &after", "Right", "Select the mark or moment after"},
    Command{Do::find, "&Review", "&Find…", "Ctrl+F", "Moments that hold a word or a shade"},
    Command{Do::deselect, "&Review", "Select n&othing", "Escape", "And stop what plays"},
    Command{Do::review_by_time, "&Review", "In order of &time", "", "The review goes from start to end",
            Kind::radio, true},
    Command{Do::review_unsure_first, "&Review", "&Unsure ones first", "",
            "The review begins with the least sure", Kind::radio},
    Command{Do::review_notes_too, "&Review", "Not&es too", "", "Notes are many; else they are left out",
            Kind::check, true},

    Command{Do::draft_script, "S&cript", "&Draft from the kept moments", "Ctrl+D",
            "What is in your own words stays as it is"},
    Command{Do::add_aside, "S&cript", "Add an &aside", "A", "Spoken over the music, at the playhead"},
    Command{Do::add_opening, "S&cript", "Add an &opening", "", "Before the music"},
    Command{Do::add_closing, "S&cript", "Add a &closing", "", "After the music"},
    Command{Do::mend, "S&cript", "&Mend what doesn't fit", "F",
            "The warning of the selected part: to a phrase end, a rest, a shorter quote", Kind::plain, true},
    Command{Do::halt_earlier, "S&cript", "Halt a phrase &earlier", "[", "The selected stop"},
    Command{Do::halt_later, "S&cript", "Halt a phrase &later", "]", "The selected stop"},
    Command{Do::script_settings, "S&cript", "Limits and &rates…", "",
            "Speaking rate, limits on quoting, pictures a second", Kind::plain, true},
    Command{Do::rehearse, "S&cript", "Re&hearse", "Ctrl+R",
            "Plays, halts, shows your words large and takes their time"},
    Command{Do::rehearse_from_here, "S&cript", "Rehearse fr&om the selected part", "Ctrl+Shift+R",
            "From the music before it"},
    Command{Do::write_files, "S&cript", "Write the &files for the edit…", "Ctrl+E",
            "Cue sheet, captions, edit list, guide movie and the rest, into a folder"},

    Command{Do::play_upper, "Ver&sions", "Play the &upper one", "U",
            "The selected difference, or the line looked at, as the upper performance sings it"},
    Command{Do::play_lower, "Ver&sions", "Play the &lower one", "I", "The same of the lower performance"},
    Command{Do::play_in_turn, "Ver&sions", "&One after the other", "O",
            "First the upper one, then the lower one"},
    Command{Do::play_both, "Ver&sions", "&Both at once", "Y",
            "The upper one on the left, the lower one in step on the right"},
    Command{Do::moment_other, "Ver&sions", "Make a &moment in the other one", "",
            "Of the selected difference; M makes it in the one that you looked at last", Kind::plain, true},
    Command{Do::pin_places, "Ver&sions", "&Pin the two places", "X",
            "Where you clicked in both lines they sing the same: the two are compared anew around it",
            Kind::plain, true},
    Command{Do::unpin, "Ver&sions", "&Remove the selected pin", "", "And compare anew"},
    Command{Do::swap_versions, "Ver&sions", "S&wap upper and lower", "",
            "Differences are told of the lower one", Kind::plain, true},
    Command{Do::as_sung, "Ver&sions", "At the pitch that &each sings", "G",
            "Else the lower one is brought into the key of the upper one", Kind::check},
    Command{Do::differences_by_time, "Ver&sions", "Differences in order of &time", "",
            "The list goes from start to end", Kind::radio, true},
    Command{Do::differences_telling, "Ver&sions", "Most tellin&g first", "",
            "The list begins with what is furthest beyond the ear's own error", Kind::radio},
    Command{Do::write_report, "Ver&sions", "Wr&ite a report...", "",
            "What to speak of, with pictures and tables: a page, a PDF, text, or for other programs",
            Kind::plain, true},

    Command{Do::play, "&Playback", "&Play or pause", "Space", "From the playhead"},
    Command{Do::play_selection, "&Playback", "Play the &selection", "Enter",
            "From a little before it to a little after"},
    Command{Do::loop, "&Playback", "&Loop", "L",
            "The selection, or the phrase at the playhead, over and over", Kind::check},
    Command{Do::slower, "&Playback", "Slo&wer", "-", "Down to a quarter, at the same pitch", Kind::plain,
            true},
    Command{Do::faster, "&Playback", "&Faster", "+", "Up to full speed"},
    Command{Do::full_speed, "&Playback", "F&ull speed", "0", ""},
    Command{Do::back, "&Playback", "&Back a little", "Ctrl+Left", "One second", Kind::plain, true},
    Command{Do::forward, "&Playback", "Forwar&d a little", "Ctrl+Right", "One second"},
    Command{Do::frame_back, "&Playback", "A picture b&ack", ",", "Without sound"},
    Command{Do::frame_forward, "&Playback", "A picture fo&rward", ".", "Without sound"},
    Command{Do::tone_off, "&Playback", "No reference &tone", "", "", Kind::radio, true},
    Command{Do::tone_sung, "&Playback", "Tone at the sun&g pitch", "", "Quietly, while it plays",
            Kind::radio},
    Command{Do::tone_ideal, "&Playback", "Tone at the &ideal pitch", "", "The nearest note in this tuning",
            Kind::radio},

    Command{Do::view_sheet, "&View", "&Sheet", "F5", "The marked-up song", Kind::radio},
    Command{Do::view_pages, "&View", "Pa&ges", "F8", "The whole song as it would be printed", Kind::radio},
    Command{Do::view_profile, "&View", "&Profile", "F6", "What this performance shows, summed up",
            Kind::radio},
    Command{Do::view_script, "&View", "Scrip&t", "F9", "Stops, asides and your words", Kind::radio},
    Command{Do::view_versions, "&View", "&Versions", "F4", "Two performances of the piece, line against line",
            Kind::radio},
    Command{Do::all_moments, "&View", "All mo&ments", "", "On the sheet and in its margin", Kind::radio,
            true},
    Command{Do::kept_moments, "&View", "Only &kept ones", "", "Proposals are left out", Kind::radio},
    Command{Do::strength_moments, "&View", "Only st&rengths", "", "", Kind::radio},
    Command{Do::watch_moments, "&View", "Only those to &watch", "", "", Kind::radio},
    Command{Do::explain_moments, "&View", "Only those to &explain", "", "", Kind::radio},
    Command{Do::zoom_in, "&View", "&Longer lines", "Ctrl++", "More room for each second", Kind::plain, true},
    Command{Do::zoom_out, "&View", "S&horter lines", "Ctrl+-", "Less room for each second"},
    Command{Do::zoom_fit, "&View", "&Fit the lines", "Ctrl+0", "Nine of ten phrases have room"},
    Command{Do::taller, "&View", "&Taller lines", "Ctrl+Up", "More room for each semitone"},
    Command{Do::lower, "&View", "L&ower lines", "Ctrl+Down", "Less room for each semitone"},
    Command{Do::picture, "&View", "The p&icture", "F7", "Show or hide it", Kind::check, true},
    Command{Do::save_still, "&View", "Save the pictur&e as a file…", "", "The one that is shown"},

    Command{Do::key_chart, "&Help", "&Keys", "F1", "All keys on one page, to print"},
    Command{Do::about, "&Help", "&About Luftpause", "", "Version, cautions, licence"},
};

int code_of(const char* key) {
    if (std::strcmp(key, "Space") == 0) return WXK_SPACE;
    if (std::strcmp(key, "Enter") == 0) return WXK_RETURN;
    if (std::strcmp(key, "Delete") == 0) return WXK_DELETE;
    if (std::strcmp(key, "Escape") == 0) return WXK_ESCAPE;
    if (std::strcmp(key, "Left") == 0) return WXK_LEFT;
    if (std::strcmp(key, "Right") == 0) return WXK_RIGHT;
    return std::strlen(key) == 1 ? static_cast<unsigned char>(key[0]) : 0;
}

} // namespace

std::span<const Command> commands() {
    return kAll;
}

const Command& command(Do id) {
    return *std::ranges::find(kAll, id, &Command::id);
}

std::optional<Do> command_of(const wxKeyEvent& event) {
    if (event.ControlDown() || event.AltDown() || event.MetaDown()) return std::nullopt;
    int pressed = event.GetKeyCode();
    const wxChar letter = event.GetUnicodeKey();
    if (pressed == WXK_NUMPAD_ENTER) pressed = WXK_RETURN;
    if (pressed == WXK_NUMPAD_ADD) pressed = '+';
    if (pressed == WXK_NUMPAD_SUBTRACT) pressed = '-';
    if (pressed == WXK_BACK) pressed = WXK_DELETE;
    if (pressed == '=' && event.ShiftDown()) pressed = '+';
    for (const auto& one : kAll) {
        const int code = code_of(one.key);
        if (code != 0 && (code == pressed || (letter > L' ' && letter == static_cast<wxChar>(code))))
            return one.id;
    }
    return std::nullopt;
}

} // namespace luft::desk
