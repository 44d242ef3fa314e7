#include "desk/talk_form.h"

#include "base/text.h"
#include "base/typed_time.h"
#include "desk/text.h"
#include "desk/work/script_edits.h"
#include "desk/work/script_rows.h"

#include <wx/textdlg.h>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace luft::desk {
namespace {

using project::ScriptItem;
using project::ScriptItemKind;

constexpr int kPause = 1200;    ///< ms without a key: the words are stored
constexpr int kInset = 15;      ///< tenths of a millimetre
constexpr int kRoomBeside = 52; ///< edges, and the scroll bar when it comes
constexpr int kReplaySpeeds[] = {100, 75, 50, 35, 25};

} // namespace

TalkForm::TalkForm(wxWindow* parent, Session& session, Wishes wishes)
    : wxScrolledWindow(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL), session_(session),
      wishes_(std::move(wishes)), pause_(this) {
    SetScrollRate(0, 12);
    const int edge = FromDIP(12);
    auto* column = new wxBoxSizer(wxVERTICAL);
    title_ = new wxStaticText(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_ELLIPSIZE_END);
    wxFont large = title_->GetFont();
    large.SetFractionalPointSize(large.GetFractionalPointSize() * 1.2);
    title_->SetFont(large.Bold());
    column->Add(title_, 0, wxEXPAND | wxLEFT | wxRIGHT | wxTOP, edge);
    when_ = new wxStaticText(this, wxID_ANY, "");
    column->Add(when_, 0, wxEXPAND | wxLEFT | wxRIGHT | wxTOP, edge / 2);
    column->GetItem(when_)->SetBorder(edge);
    warning_ = new wxStaticText(this, wxID_ANY, "");
    column->Add(warning_, 0, wxEXPAND | wxLEFT | wxRIGHT | wxTOP, edge);
    mend_ = new wxButton(this, wxID_ANY, "");
    mend_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { wishes_.mend(); });
    column->Add(mend_, 0, wxLEFT | wxRIGHT | wxTOP, edge);
    fields_ = new wxPanel(this);
    fields_->SetSizer(new wxBoxSizer(wxVERTICAL));
    make_words();
    make_places();
    column->Add(fields_, 1, wxEXPAND | wxALL, edge);
    SetSizer(column);
    Bind(wxEVT_TIMER, [this](wxTimerEvent&) { store(); });
    Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
        event.Skip();
        FitInside();
    });
    show_nothing("");
}

void TalkForm::make_words() {
    auto* column = fields_->GetSizer();
    column->Add(new wxStaticText(fields_, wxID_ANY, "Words to speak  (E)"), 0, wxBOTTOM, FromDIP(3));
    words_ =
        new wxTextCtrl(fields_, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(-1, 110)), wxTE_MULTILINE);
    wxTextAttr inset; // else a space past a line's end pushes all words aside
    inset.SetLeftIndent(kInset);
    inset.SetRightIndent(kInset);
    words_->SetDefaultStyle(inset);
    column->Add(words_, 1, wxEXPAND);
    auto* below = new wxBoxSizer(wxHORIZONTAL);
    count_ = new wxStaticText(fields_, wxID_ANY, "");
    below->Add(count_, 1, wxALIGN_CENTRE_VERTICAL);
    estimate_ = new wxButton(fields_, wxID_ANY, "Estimate again");
    estimate_->SetToolTip("Forget the rehearsed time and count words");
    below->Add(estimate_, 0, wxLEFT, FromDIP(6));
    reword_ = new wxButton(fields_, wxID_ANY, "Not my words");
    reword_->SetToolTip("The next draft may word this part anew");
    below->Add(reword_, 0, wxLEFT, FromDIP(6));
    column->Add(below, 0, wxEXPAND | wxTOP, FromDIP(4));
    words_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) {
        if (filling_) return;
        pause_.StartOnce(kPause);
        count();
    });
    words_->Bind(wxEVT_KILL_FOCUS, [this](wxFocusEvent& event) {
        event.Skip();
        CallAfter([this] { store(); });
    });
    estimate_->Bind(wxEVT_BUTTON,
                    [this](wxCommandEvent&) { change([](ScriptItem& item) { item.rehearsed.reset(); }); });
    reword_->Bind(wxEVT_BUTTON,
                  [this](wxCommandEvent&) { change([](ScriptItem& item) { item.own_words = false; }); });
}

void TalkForm::make_places() {
    grid_ = new wxFlexGridSizer(2, FromDIP(wxSize(10, 6)));
    grid_->AddGrowableCol(1);
    const auto row = [&](const wxString& words, auto* field, std::vector<wxWindow*>& group) {
        auto* label = new wxStaticText(fields_, wxID_ANY, words);
        grid_->Add(label, 0, wxALIGN_CENTRE_VERTICAL);
        group.push_back(label);
        if constexpr (std::is_base_of_v<wxWindow, std::remove_pointer_t<decltype(field)>>)
            group.push_back(field);
        grid_->Add(field, 1, wxEXPAND);
    };
    const auto choice = [&] { return new wxChoice(fields_, wxID_ANY); };
    const wxString kinds[] = {"a stop: playback halts", "an aside: over the music"};
    kind_ = new wxChoice(fields_, wxID_ANY, wxDefaultPosition, wxDefaultSize, 2, kinds);
    row("This is", kind_, placed_only_);
    auto* place = new wxBoxSizer(wxHORIZONTAL);
    halt_ =
        new wxTextCtrl(fields_, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(84, -1)), wxTE_PROCESS_ENTER);
    place->Add(halt_, 0, wxALIGN_CENTRE_VERTICAL);
    earlier_ = new wxButton(fields_, wxID_ANY, shown("Earlier  ["));
    later_ = new wxButton(fields_, wxID_ANY, shown("Later  ]"));
    for (auto* button : {earlier_, later_})
        place->Add(button, 0, wxLEFT, FromDIP(6));
    row("In the recording", place, placed_only_);
    for (wxWindow* window :
         {static_cast<wxWindow*>(halt_), static_cast<wxWindow*>(earlier_), static_cast<wxWindow*>(later_)})
        placed_only_.push_back(window);
    row("Music before it", lead_in_ = choice(), stop_only_);
    row("Plays to compare", quote_ = choice(), quote_only_);
    row("Plays again", replay_ = choice(), stop_only_);
    wxArrayString speeds;
    for (const int percent : kReplaySpeeds)
        speeds.Add(wxString::Format("%d %%", percent));
    speed_ = new wxChoice(fields_, wxID_ANY, wxDefaultPosition, wxDefaultSize, speeds);
    row("At speed", speed_, stop_only_);
    row("Then goes on", resume_ = choice(), stop_only_);
    fields_->GetSizer()->Add(grid_, 0, wxEXPAND | wxTOP, FromDIP(10));
    auto* buttons = new wxBoxSizer(wxHORIZONTAL);
    auto* play = new wxButton(fields_, wxID_ANY, "Hear it  (Enter)");
    auto* remove = new wxButton(fields_, wxID_ANY, "Remove  (Del)");
    buttons->Add(play);
    buttons->Add(remove, 0, wxLEFT, FromDIP(6));
    placed_only_.push_back(play);
    fields_->GetSizer()->Add(buttons, 0, wxTOP, FromDIP(10));

    play->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { wishes_.play(); });
    remove->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { wishes_.remove(); });
    earlier_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { wishes_.halt(false); });
    later_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { wishes_.halt(true); });
    halt_->Bind(wxEVT_TEXT_ENTER, [this](wxCommandEvent&) { typed_halt(); });
    kind_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        change([&](ScriptItem& item) {
            item.kind = event.GetInt() == 0 ? ScriptItemKind::stop : ScriptItemKind::aside;
        });
    });
    lead_in_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        if (!item_ || filling_) return;
        store();
        const auto index = static_cast<std::size_t>(event.GetInt());
        auto at = index < lead_ins_.size() ? lead_ins_[index].at : std::nullopt;
        if (index >= lead_ins_.size()) {
            at = ask_place("The music before it begins at", item_->at);
            if (!at) return fill_places(*item_);
        }
        const ScriptItem talk = with_lead_in(*source_, *item_, at);
        wishes_.guarded([&] {
            session_.edit([&](project::Project& project) {
                project.change_script(talk.performance, {talk}, "change the music before a stop");
            });
        });
    });
    resume_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        if (!item_ || filling_) return;
        const auto index = static_cast<std::size_t>(event.GetInt());
        auto at = index < resumes_.size() ? resumes_[index].at : std::nullopt;
        if (index >= resumes_.size()) {
            at = ask_place("Playback goes on at", item_->at);
            if (!at) return fill_places(*item_);
        }
        change([&](ScriptItem& item) { item.resume = at; });
    });
    quote_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        if (item_ && !filling_) choose_quote(static_cast<std::size_t>(event.GetInt()));
    });
    replay_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        change([&](ScriptItem& item) {
            item.replay = replays_.at(static_cast<std::size_t>(event.GetInt())).span;
        });
    });
    speed_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        change([&](ScriptItem& item) { item.replay_speed = kReplaySpeeds[event.GetInt()] / 100.0; });
    });
}

void TalkForm::show(const script::Source& source, const ScriptItem& item, const Around& around) {
    const bool other = !item_ || item_->id != item.id;
    filling_ = true;
    source_ = &source;
    // What is being written isn't disturbed by what happens beside it.
    const bool unsaved = !other && words_->HasFocus() && typed(words_->GetValue()) != item_->text;
    if (other || (!unsaved && item.text != typed(words_->GetValue()))) words_->ChangeValue(shown(item.text));
    item_ = item;
    title_->SetLabelText(shown(around.title));
    when_->SetLabelText(shown(around.when));
    std::string warnings;
    for (const auto& one : around.warnings)
        warnings += (warnings.empty() ? "! " : "\n! ") + one;
    warning_->SetLabelText(shown(warnings));
    warning_->Wrap(std::max(FromDIP(120), GetClientSize().x - FromDIP(kRoomBeside)));
    warning_->Show(!warnings.empty());
    mend_->SetLabelText(shown(around.remedy.value_or("") + "  (F)"));
    mend_->Show(around.remedy.has_value());
    fill_places(item);
    count();
    const bool writable = !session_.read_only();
    reword_->Show(item.own_words && writable && item.moment.has_value());
    estimate_->Show(item.rehearsed.has_value() && writable);
    fields_->Enable(writable);
    fields_->Show();
    filling_ = false;
    Layout();
    fields_->Layout();
    FitInside();
}

void TalkForm::fill_places(const ScriptItem& item) {
    filling_ = true;
    const bool stop = item.kind == ScriptItemKind::stop, aside = item.kind == ScriptItemKind::aside;
    for (auto* window : placed_only_)
        window->Show(stop || aside);
    for (auto* window : stop_only_)
        window->Show(stop);
    for (auto* window : quote_only_)
        window->Show(stop && !source_->others.empty());
    earlier_->Show(stop);
    later_->Show(stop);
    kind_->SetSelection(aside ? 1 : 0);
    halt_->ChangeValue(shown(clock_text(item.at)));
    const auto fill = [](wxChoice* field, const auto& choices, std::size_t at, const char* other) {
        field->Clear();
        for (const auto& one : choices)
            field->Append(shown(one.words));
        if (other) field->Append(shown(other));
        field->SetSelection(static_cast<int>(std::min(at, choices.size() - 1)));
    };
    const auto index = [](const std::vector<PlaceChoice>& choices, std::optional<Seconds> now) {
        return static_cast<std::size_t>(std::ranges::find(choices, now, &PlaceChoice::at) - choices.begin());
    };
    const ScriptItem* before = talk_before(*source_, item);
    lead_ins_ = lead_ins(*source_, item);
    fill(lead_in_, lead_ins_, index(lead_ins_, before ? before->resume : std::nullopt), "another place…");
    resumes_ = resumes(*source_, item);
    fill(resume_, resumes_, index(resumes_, item.resume), "another place…");
    quotes_ = quotes(*source_, item);
    const auto quote = std::ranges::find(quotes_, item.quote, &QuoteChoice::quote);
    fill(quote_, quotes_, static_cast<std::size_t>(quote - quotes_.begin()), "another span…");
    replays_ = replays(*source_, item);
    const auto replay = std::ranges::find(replays_, item.replay, &SpanChoice::span);
    fill(replay_, replays_, static_cast<std::size_t>(replay - replays_.begin()), nullptr);
    const int percent = static_cast<int>(std::lround(item.replay_speed * 100));
    const auto nearest =
        std::ranges::min_element(kReplaySpeeds, {}, [&](int s) { return std::abs(s - percent); });
    speed_->SetSelection(static_cast<int>(nearest - std::begin(kReplaySpeeds)));
    speed_->Enable(item.replay || item.quote);
    filling_ = false;
}

void TalkForm::show_nothing(const wxString& words) {
    pause_.Stop();
    item_.reset();
    title_->SetLabelText("");
    when_->SetLabelText(words);
    when_->Wrap(std::max(FromDIP(120), GetClientSize().x - FromDIP(kRoomBeside)));
    warning_->Hide();
    mend_->Hide();
    fields_->Hide();
    Layout();
}

void TalkForm::count() {
    if (!item_) return;
    ScriptItem now = *item_;
    now.text = typed(words_->GetValue());
    if (now.text != item_->text) now.rehearsed.reset();
    count_->SetLabelText(shown(talk_facts(now, source_->settings)));
}

void TalkForm::store() {
    pause_.Stop();
    if (!item_) return;
    const std::string words = typed(words_->GetValue());
    if (words == item_->text) return;
    const ScriptItem item = *item_;
    item_->text = words; // the edit shows it again, and there is nothing to store then
    bool stored = false;
    wishes_.guarded([&] {
        set_words(session_, item, words);
        stored = true;
    });
    if (!stored && item_ && item_->id == item.id) item_->text = item.text; // it is tried again
}

void TalkForm::change(const std::function<void(ScriptItem&)>& how) {
    if (!item_ || filling_) return;
    store();
    ScriptItem changed = *item_;
    how(changed);
    wishes_.guarded([&] { change_in_script(session_, changed); });
}

std::optional<Seconds> TalkForm::read_time(const wxString& text) {
    const auto at = typed_time(typed(text));
    if (!at)
        wishes_.guarded([&] {
            throw Error(Fault::bad_request, "'" + typed(text) + "' is no time.",
                        "Write minutes:seconds, as 1:02.5.");
        });
    return at;
}

void TalkForm::typed_halt() {
    const auto at = read_time(halt_->GetValue());
    if (!at) return;
    change([&](ScriptItem& item) { item.at = *at; });
    wishes_.done();
}

void TalkForm::choose_quote(std::size_t choice) {
    if (choice < quotes_.size()) return change([&](ScriptItem& item) { item.quote = quotes_[choice].quote; });
    const auto now = item_->quote ? item_->quote : quotes_.size() > 1 ? quotes_[1].quote : std::nullopt;
    wxTextEntryDialog ask(this, "Which performance, and from when to when: as \"live 0:41-0:44.5\"",
                          "Another span", shown(quote_to_type(*source_, now)));
    if (ask.ShowModal() != wxID_OK) return fill_places(*item_);
    const auto quote = typed_quote(*source_, typed(ask.GetValue()));
    if (quote) return change([&](ScriptItem& item) { item.quote = quote; });
    fill_places(*item_);
    wishes_.guarded([&] {
        throw Error(Fault::bad_request, "'" + typed(ask.GetValue()) + "' is no span of another performance.",
                    "Write its label and two times, as live 0:41-0:44.5.");
    });
}

std::optional<Seconds> TalkForm::ask_place(const wxString& what, Seconds now) {
    wxTextEntryDialog ask(this, what + " (minutes:seconds of the recording)", "Another place",
                          shown(clock_text(now)));
    if (ask.ShowModal() != wxID_OK) return std::nullopt;
    return read_time(ask.GetValue());
}

void TalkForm::begin_words() {
    if (!item_) return;
    words_->SetFocus();
    words_->SetInsertionPointEnd();
}

} // namespace luft::desk
