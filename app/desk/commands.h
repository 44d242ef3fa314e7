// Everything that can be done, with its words and its key: menus, key chart and keyboard are made from this
// one table.
#pragma once

#include <wx/event.h>

#include <optional>
#include <span>
#include <string>

namespace luft::desk {

enum class Do : int {
    new_recording = 6000, ///< above the window library's own ids
    open_project,
    open_sample,
    save_copy,
    close_project,
    add_performance,
    listen_again,
    print_sheet,
    quit,
    undo,
    redo,
    keep,
    drop,
    change_kind,
    split_phrase,
    join_phrase,
    set_breath,
    set_switch,
    make_moment,
    make_stop,
    verdict_strength,
    verdict_watch,
    verdict_explain,
    add_shade,
    write_remark,
    find,
    next_proposal,
    previous_mark,
    next_mark,
    deselect,
    review_by_time,
    review_unsure_first,
    review_notes_too,
    play,
    play_selection,
    loop,
    slower,
    faster,
    full_speed,
    back,
    forward,
    frame_back,
    frame_forward,
    tone_off,
    tone_sung,
    tone_ideal,
    view_sheet,
    view_pages,
    view_profile,
    view_script,
    view_versions,
    play_upper,
    play_lower,
    play_in_turn,
    play_both,
    moment_other,
    pin_places,
    unpin,
    swap_versions,
    as_sung,
    differences_by_time,
    differences_telling,
    write_report,
    draft_script,
    mend,
    halt_earlier,
    halt_later,
    add_aside,
    add_opening,
    add_closing,
    script_settings,
    rehearse,
    rehearse_from_here,
    write_files,
    zoom_in,
    zoom_out,
    zoom_fit,
    taller,
    lower,
    picture,
    save_still,
    vocabulary,
    piece_notes,
    spread_words,
    key_chart,
    about,
    all_moments,
    kept_moments,
    strength_moments,
    watch_moments,
    explain_moments,
    first_facet, ///< a hundred ids, one a facet
    last_facet = first_facet + 99,
    first_recent, ///< nine ids
    last_recent = first_recent + 8,
};

struct Command {
    Do id;
    const char* menu;  ///< under which heading
    const char* words; ///< in the menu, with its access letter
    const char* key;   ///< as the chart shows it: "K", "Ctrl+Z"; empty for none
    const char* help;  ///< one line
    enum class Kind { plain, check, radio } kind = Kind::plain;
    bool rule_before = false; ///< a line above it in the menu
};

std::span<const Command> commands();
const Command& command(Do id);

/// The command whose key was pressed, for keys without Ctrl or Alt, which the menus don't handle; nothing for
/// other keys.
std::optional<Do> command_of(const wxKeyEvent& event);

} // namespace luft::desk
