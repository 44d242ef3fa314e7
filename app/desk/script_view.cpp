#include "desk/script_view.h"

#include "base/text.h"
#include "desk/text.h"
#include "desk/work/script_edits.h"
#include "script/gather.h"

#include <algorithm>

namespace luft::desk {
namespace {

using project::ScriptItem;

constexpr int kFormWidth = 470;

const char* const kEmpty =
    "No script yet.\n\nKeep the moments that you mean to speak about (K on the sheet),\n"
    "then draft the script from them: Ctrl+D.\n"
    "Or put stops in by hand, while listening: S.";

} // namespace

ScriptView::ScriptView(wxWindow* parent, Session& session, Wishes wishes)
    : wxPanel(parent, wxID_ANY), session_(session), wishes_(std::move(wishes)) {
    auto* column = new wxBoxSizer(wxVERTICAL);
    make_head(*column);
    split_ = new wxSplitterWindow(this, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                                  wxSP_LIVE_UPDATE | wxSP_THIN_SASH);
    split_->SetMinimumPaneSize(FromDIP(300));
    split_->SetSashGravity(1);
    list_ = new ScriptList(split_,
                           {[this](std::size_t row) { select_row(row); }, [this] { form_->begin_words(); },
                            [this](project::ScriptItemId id, auto before, auto after) {
                                wishes_.guarded([&] { move(id, before, after); });
                            }});
    list_->say_when_empty(kEmpty);
    form_ = new TalkForm(split_, session_,
                         {wishes_.guarded, [this] { wishes_.run(Do::mend); },
                          [this](bool later) { wishes_.run(later ? Do::halt_later : Do::halt_earlier); },
                          [this] { play_to_it(); }, [this] { wishes_.run(Do::drop); }, wishes_.done});
    split_->SplitVertically(list_, form_, -FromDIP(kFormWidth));
    column->Add(split_, 1, wxEXPAND);
    SetSizer(column);
    session_.watch([this](const Session::Change& change) {
        if (change.project || change.shown) {
            selected_.reset();
            form_->forget();
        }
        stale_ = stale_ || change.project || change.shown || change.contents;
        if (IsShownOnScreen()) bring_up_to_date();
    });
}

void ScriptView::make_head(wxSizer& column) {
    auto* buttons = new wxBoxSizer(wxHORIZONTAL);
    const auto button = [&](Do id, const wxString& words) {
        auto* one = new wxButton(this, wxID_ANY, words);
        one->SetToolTip(wxString(command(id).help));
        one->Bind(wxEVT_BUTTON, [this, id](wxCommandEvent&) {
            wishes_.run(id);
            wishes_.done();
        });
        buttons->Add(one, 0, wxRIGHT, FromDIP(6));
    };
    button(Do::draft_script, "Draft from the kept moments");
    button(Do::add_aside, "Add an aside");
    button(Do::make_stop, "Add a stop");
    button(Do::script_settings, shown("Limits and rates…"));
    buttons->AddStretchSpacer();
    button(Do::rehearse, "Rehearse");
    column.Add(buttons, 0, wxEXPAND | wxLEFT | wxRIGHT | wxTOP, FromDIP(10));
    budget_ = new BudgetBar(this, [this](std::size_t segment) {
        const auto from = sheet_.segments.at(segment).programme_start;
        const auto when = clock_text(seconds(from));
        for (std::size_t i = 0; i < rows_.size(); ++i)
            if (rows_[i].item == sheet_.segments[segment].item && (rows_[i].item || rows_[i].when == when))
                return select_row(i);
    });
    column.Add(budget_, 0, wxEXPAND | wxTOP, FromDIP(4));
    whole_ = new wxPanel(this);
    auto* whole = new wxBoxSizer(wxHORIZONTAL);
    whole_words_ =
        new wxStaticText(whole_, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_ELLIPSIZE_END);
    whole_mend_ = new wxButton(whole_, wxID_ANY, "");
    whole_mend_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
        wishes_.guarded([&] { mend_first(on_the_whole_); });
        wishes_.done();
    });
    whole->Add(whole_words_, 1, wxALIGN_CENTRE_VERTICAL | wxLEFT | wxRIGHT, FromDIP(12));
    whole->Add(whole_mend_, 0, wxALL, FromDIP(4));
    whole_->SetSizer(whole);
    column.Add(whole_, 0, wxEXPAND);
}

void ScriptView::bring_up_to_date() {
    if (!stale_) return;
    stale_ = false;
    refresh();
}

void ScriptView::refresh() {
    source_ = {};
    sheet_ = {};
    rows_.clear();
    if (session_.shows_performance()) {
        try {
            source_ = script::gather(session_.project(), session_.source().performance);
            sheet_ = script::lay_out(source_);
            rows_ = script_rows(source_, sheet_);
            list_->say_when_empty(kEmpty);
        } catch (const Error& error) { // a damaged project, or times that make no sense
            list_->say_when_empty(shown("The script can't be shown.\n" + std::string(error.what())));
        }
    }
    if (source_.items.empty()) rows_.clear(); // one line of music is no script
    on_the_whole_ = warnings_on_the_whole(rows_, sheet_);
    if (rows_.empty()) on_the_whole_.clear();
    list_->show(rows_, sheet_.warnings);
    budget_->show(sheet_, source_.settings);
    show_whole();
    if (selected_ && !item(*selected_)) selected_.reset();
    if (!selected_ && !source_.items.empty()) selected_ = source_.items.front().id;
    select(selected_);
}

void ScriptView::show_whole() {
    whole_->Show(!on_the_whole_.empty());
    if (!on_the_whole_.empty()) {
        const auto& warning = sheet_.warnings[on_the_whole_.front()];
        const std::string more =
            on_the_whole_.size() > 1 ? "  (and " + std::to_string(on_the_whole_.size() - 1) + " more)" : "";
        whole_words_->SetLabelText(shown("! " + warning.words + more));
        whole_words_->SetToolTip(shown(warning.words));
        const auto help = first_help(on_the_whole_);
        whole_mend_->Show(help.has_value());
        if (help) whole_mend_->SetLabelText(shown(help->words));
        whole_mend_->SetToolTip("Or F, where the selected part has nothing to mend");
        whole_->Layout();
    }
    Layout();
}

const ScriptItem* ScriptView::item(project::ScriptItemId id) const {
    const auto at = std::ranges::find(source_.items, id, &ScriptItem::id);
    return at == source_.items.end() ? nullptr : &*at;
}

const ScriptItem* ScriptView::selected_item() const {
    return selected_ ? item(*selected_) : nullptr;
}

std::optional<std::size_t> ScriptView::selected_row() const {
    for (std::size_t i = 0; i < rows_.size(); ++i)
        if (selected_ && rows_[i].item == selected_) return i;
    return std::nullopt;
}

void ScriptView::select(std::optional<project::ScriptItemId> id) {
    form_->store(); // before anything is taken from the source, which changes with it
    selected_ = id;
    list_->select(selected_row());
    budget_->select(selected_);
    refresh_form();
}

void ScriptView::select_row(std::size_t row) {
    form_->store();
    if (row >= rows_.size()) return;
    if (rows_[row].item) return select(rows_[row].item);
    selected_.reset();
    list_->select(row);
    budget_->select({});
    std::string words = rows_[row].title + ".";
    for (const std::size_t w : rows_[row].warnings)
        words += "\n\n! " + sheet_.warnings[w].words;
    form_->show_nothing(shown(words));
    if (rows_[row].warnings.empty()) return;
    // What helps is a change of the talk before it: that is shown with it.
    for (std::size_t i = row; i-- > 0;)
        if (rows_[i].kind == ScriptRow::Kind::talk) {
            selected_ = rows_[i].item;
            break;
        }
    refresh_form();
}

void ScriptView::refresh_form() {
    const ScriptItem* now = selected_item();
    if (!now) return form_->show_nothing(rows_.empty() ? "" : "Select a part of the script.");
    const auto row = selected_row();
    TalkForm::Around around;
    if (row) {
        around.title = rows_[*row].title;
        around.when = rows_[*row].when.empty() ? "Not in the programme yet"
                                               : "At " + rows_[*row].when + " of the programme";
        const auto warnings = warnings_here();
        for (const std::size_t w : warnings)
            around.warnings.push_back(sheet_.warnings[w].words);
        if (const auto help = first_help(warnings)) around.remedy = help->words;
    }
    form_->show(source_, *now, around);
}

} // namespace luft::desk
