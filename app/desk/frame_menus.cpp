// The menus, made from the table of commands.
#include "desk/frame.h"
#include "desk/text.h"

#include <algorithm>

namespace luft::desk {

void Frame::make_menus() {
    auto* bar = new wxMenuBar;
    wxString heading;
    wxMenu* menu = nullptr;
    for (const auto& one : commands()) {
        if (!menu || heading != one.menu) {
            heading = one.menu;
            menu = new wxMenu;
            bar->Append(menu, heading);
        }
        if (one.rule_before) menu->AppendSeparator();
        if (one.id == Do::write_remark) {
            facet_menu_ = new wxMenu;
            menu->AppendSubMenu(facet_menu_, "Shade of a &facet");
        }
        // Keys without Ctrl are handled in key(), so that letters can be typed into fields: they are only
        // told here.
        const wxString key(one.key);
        const bool handled = key.StartsWith("Ctrl") || key.StartsWith("F");
        const wxString words = shown(one.words) + (key.empty() ? ""
                                                   : handled   ? "\t" + key
                                                               : "    (" + key + ")");
        const wxItemKind kind = one.kind == Command::Kind::check   ? wxITEM_CHECK
                                : one.kind == Command::Kind::radio ? wxITEM_RADIO
                                                                   : wxITEM_NORMAL;
        menu->Append(static_cast<int>(one.id), words, wxString(one.help), kind);
    }
    file_menu_ = bar->GetMenu(0);
    auto* again = new wxMenu;
    file_menu_->Insert(2, wxID_ANY, "Open a&gain", again);
    recent_.UseMenu(again);
    recent_.AddFilesToMenu();
    SetMenuBar(bar);
}

void Frame::update_menus() {
    const bool open = session_.is_open(), shown_one = session_.shows_performance();
    const bool writable = open && !session_.read_only();
    auto& bar = *GetMenuBar();
    const auto enable = [&](Do id, bool on) { bar.Enable(static_cast<int>(id), on); };
    for (const Do id : {Do::save_copy, Do::close_project, Do::view_sheet, Do::view_pages, Do::view_profile,
                        Do::view_script, Do::view_versions, Do::vocabulary})
        enable(id, open);
    enable(Do::picture, open && split_->IsSplit());
    for (const Do id :
         {Do::print_sheet,   Do::play,      Do::play_selection, Do::loop,     Do::slower,    Do::faster,
          Do::full_speed,    Do::back,      Do::forward,        Do::zoom_in,  Do::zoom_out,  Do::zoom_fit,
          Do::taller,        Do::lower,     Do::find,           Do::tone_off, Do::tone_sung, Do::tone_ideal,
          Do::previous_mark, Do::next_mark, Do::next_proposal,  Do::deselect})
        enable(id, shown_one);
    for (const Do id : {Do::add_performance, Do::piece_notes})
        enable(id, writable);
    for (const Do id : {Do::listen_again, Do::spread_words, Do::set_breath, Do::set_switch, Do::make_moment,
                        Do::make_stop, Do::split_phrase, Do::join_phrase, Do::draft_script, Do::add_aside,
                        Do::add_opening, Do::add_closing, Do::script_settings})
        enable(id, writable && shown_one);
    for (const Do id : {Do::rehearse, Do::write_files})
        enable(id, shown_one);
    enable(Do::rehearse_from_here, shown_one && on_page(script_) && script_->has_selection());
    const bool in_script = on_page(script_);
    for (const Do id : {Do::mend, Do::halt_earlier, Do::halt_later})
        enable(id, writable && in_script);
    const bool mark = session_.selected_mark() != nullptr, moment = session_.selected_moment() != nullptr;
    for (const Do id : {Do::keep, Do::drop})
        enable(id, writable && !in_script && (mark || moment));
    if (in_script) enable(Do::drop, writable && script_->has_selection());
    enable(Do::change_kind,
           writable && mark && session_.selected_mark()->kind() != project::MarkKind::phrase);
    for (const Do id :
         {Do::verdict_strength, Do::verdict_watch, Do::verdict_explain, Do::add_shade, Do::write_remark})
        enable(id, writable && !in_script && moment);
    if (in_script) enable(Do::write_remark, writable && script_->has_selection());
    for (const Do id : {Do::frame_back, Do::frame_forward, Do::save_still})
        enable(id, picture_->has_pictures());
    update_version_menu();
    const auto undo = session_.undo_label(), redo = session_.redo_label();
    bar.SetLabel(static_cast<int>(Do::undo),
                 undo ? "&Undo: " + shown(*undo) + "\tCtrl+Z" : wxString("&Undo\tCtrl+Z"));
    bar.SetLabel(static_cast<int>(Do::redo),
                 redo ? "&Redo: " + shown(*redo) + "\tCtrl+Y" : wxString("&Redo\tCtrl+Y"));
    enable(Do::undo, undo.has_value());
    enable(Do::redo, redo.has_value());
    bar.Check(static_cast<int>(Do::picture), right_->IsSplit());
}

void Frame::update_facets() {
    const auto& facets = session_.source().vocabulary.facets;
    const auto most =
        static_cast<std::size_t>(Do::last_facet) - static_cast<std::size_t>(Do::first_facet) + 1;
    while (facet_menu_->GetMenuItemCount() > 0)
        facet_menu_->Destroy(facet_menu_->FindItemByPosition(0));
    for (std::size_t i = 0; i < std::min(facets.size(), most); ++i) {
        wxString words = shown(facets[i].name);
        words.Replace("&", "&&");
        if (i < 9) words += wxString::Format("\tCtrl+%zu", i + 1);
        facet_menu_->Append(static_cast<int>(Do::first_facet) + static_cast<int>(i), words,
                            shown(facets[i].description));
    }
}

} // namespace luft::desk
