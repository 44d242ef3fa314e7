// The script of the performance: its budget, its parts in order, and the part that is selected.
#pragma once

#include "desk/budget_bar.h"
#include "desk/commands.h"
#include "desk/script_list.h"
#include "desk/talk_form.h"
#include "desk/work/session.h"
#include "script/cue_sheet.h"

#include <wx/splitter.h>
#include <wx/wx.h>

#include <functional>
#include <optional>
#include <string>

namespace luft::desk {

class ScriptView : public wxPanel {
  public:
    struct Wishes {
        std::function<void(Do)> run;
        std::function<void(const std::function<void()>&)> guarded;
        std::function<void(const std::string&)> say; ///< what was done, in passing
        std::function<void(Span)> play;
        std::function<void()> done; ///< the keys go back to this page
    };

    ScriptView(wxWindow* parent, Session& session, Wishes wishes);

    /// Lays the script out anew if something has changed since; cheap otherwise.
    void bring_up_to_date();
    /// What a command does on this page; false when it is none of this page's.
    bool run(Do id, Seconds playhead);
    /// Up and Down; false for other keys.
    bool key(int code);
    [[nodiscard]] bool has_selection() const { return selected_item() != nullptr; }
    [[nodiscard]] const script::Source& source() const { return source_; }
    [[nodiscard]] const script::CueSheet& sheet() const { return sheet_; }
    /// The selected part.
    [[nodiscard]] std::optional<project::ScriptItemId> selected() const { return selected_; }
    /// Stores words that are still only in the field.
    void store() { form_->store(); }
    void select(std::optional<project::ScriptItemId> item);
    void SetFocus() override { list_->SetFocus(); }

  private:
    void make_head(wxSizer& column);
    void refresh();
    void refresh_form();
    void show_whole();
    void select_row(std::size_t row);
    /// Of the selected part, and of the music after it.
    [[nodiscard]] std::vector<std::size_t> warnings_here() const;
    struct Help {
        std::size_t warning = 0; ///< index into the sheet's
        std::string words;       ///< what would be done
    };
    /// The first of them that the program can mend.
    [[nodiscard]] std::optional<Help> first_help(const std::vector<std::size_t>& warnings) const;
    void mend_first(const std::vector<std::size_t>& warnings);
    void halt(bool later);
    void play_to_it();
    void move(project::ScriptItemId item, std::optional<project::ScriptItemId> before,
              std::optional<project::ScriptItemId> after);
    [[nodiscard]] const project::ScriptItem* item(project::ScriptItemId id) const;
    [[nodiscard]] const project::ScriptItem* selected_item() const;
    [[nodiscard]] std::optional<std::size_t> selected_row() const;

    Session& session_;
    Wishes wishes_;
    bool stale_ = true;
    script::Source source_;
    script::CueSheet sheet_;
    std::vector<ScriptRow> rows_;
    std::vector<std::size_t> on_the_whole_; ///< warnings
    std::optional<project::ScriptItemId> selected_;

    BudgetBar* budget_;
    wxPanel* whole_;
    wxStaticText* whole_words_;
    wxButton* whole_mend_;
    wxSplitterWindow* split_;
    ScriptList* list_;
    TalkForm* form_;
};

} // namespace luft::desk
