#include "desk/script_settings_dialog.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace luft::desk {
namespace {

struct Rate {
    const char* words;
    std::int64_t num, den;
};
constexpr std::array kRates = {Rate{"the video's own (25 without)", 0, 1},
                               Rate{"23.976", 24000, 1001},
                               Rate{"24", 24, 1},
                               Rate{"25", 25, 1},
                               Rate{"29.97", 30000, 1001},
                               Rate{"30", 30, 1},
                               Rate{"50", 50, 1},
                               Rate{"59.94", 60000, 1001},
                               Rate{"60", 60, 1}};

} // namespace

ScriptSettingsDialog::ScriptSettingsDialog(wxWindow* parent, const project::ScriptSettings& settings)
    : wxDialog(parent, wxID_ANY, "Limits and rates"), before_(settings) {
    auto* column = new wxBoxSizer(wxVERTICAL);
    auto* grid = new wxFlexGridSizer(2, FromDIP(wxSize(14, 8)));
    const auto row = [&](const wxString& words, wxWindow* field) {
        grid->Add(new wxStaticText(this, wxID_ANY, words), 0, wxALIGN_CENTRE_VERTICAL);
        grid->Add(field, 0, wxEXPAND);
    };
    words_ = new wxSpinCtrl(this, wxID_ANY);
    words_->SetRange(60, 300);
    words_->SetValue(static_cast<int>(std::lround(settings.words_per_minute)));
    row("I speak, words a minute", words_);
    const auto seconds = [&](const wxString& words, Seconds now, double most) {
        auto* field = new wxSpinCtrlDouble(this, wxID_ANY);
        field->SetDigits(1);
        field->SetIncrement(1);
        field->SetRange(0, most);
        field->SetValue(now.value());
        row(words, field);
        return field;
    };
    between_ = seconds("Music between two stops, seconds at least", settings.least_between_stops, 600);
    quote_ = seconds("Recording without a word, seconds at most (0: no limit)", settings.longest_quote, 3600);
    limit_share_ = new wxCheckBox(this, wxID_ANY, "Share of the recording quoted, percent at most");
    share_ = new wxSpinCtrl(this, wxID_ANY);
    share_->SetRange(1, 100);
    limit_share_->SetValue(settings.most_quoted_share.has_value());
    share_->SetValue(static_cast<int>(std::lround(100 * settings.most_quoted_share.value_or(0.5))));
    share_->Enable(limit_share_->GetValue());
    limit_share_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent&) { share_->Enable(limit_share_->GetValue()); });
    grid->Add(limit_share_, 0, wxALIGN_CENTRE_VERTICAL);
    grid->Add(share_, 0, wxEXPAND);
    rate_ = new wxChoice(this, wxID_ANY);
    int at = wxNOT_FOUND;
    for (const Rate& rate : kRates) {
        rate_->Append(rate.words);
        if (rate.num == settings.frame_rate_num && (rate.num == 0 || rate.den == settings.frame_rate_den))
            at = static_cast<int>(rate_->GetCount()) - 1;
    }
    if (at == wxNOT_FOUND) // set on the command line
        at = rate_->Append(wxString::Format("%lld/%lld", static_cast<long long>(settings.frame_rate_num),
                                            static_cast<long long>(settings.frame_rate_den)));
    rate_->SetSelection(at);
    row("Pictures a second", rate_);
    drop_ = new wxCheckBox(this, wxID_ANY, "Drop-frame timecode at 29.97 and 59.94");
    drop_->SetValue(settings.drop_frame);
    grid->AddSpacer(0);
    grid->Add(drop_);
    column->Add(grid, 0, wxEXPAND | wxALL, FromDIP(16));
    auto* note = new wxStaticText(this, wxID_ANY,
                                  "How much may be quoted is a question of your country's law, and yours to "
                                  "answer. The limits here only help you to keep to what you have decided.");
    note->Wrap(FromDIP(460));
    column->Add(note, 0, wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(16));
    column->Add(CreateButtonSizer(wxOK | wxCANCEL), 0, wxEXPAND | wxALL, FromDIP(12));
    SetSizerAndFit(column);
    CentreOnParent();
}

project::ScriptSettings ScriptSettingsDialog::settings() const {
    project::ScriptSettings out = before_;
    out.words_per_minute = words_->GetValue();
    out.least_between_stops = Seconds(between_->GetValue());
    out.longest_quote = Seconds(quote_->GetValue());
    out.most_quoted_share =
        limit_share_->GetValue() ? std::optional(share_->GetValue() / 100.0) : std::nullopt;
    const auto rate = static_cast<std::size_t>(rate_->GetSelection());
    if (rate < kRates.size()) {
        out.frame_rate_num = kRates[rate].num;
        out.frame_rate_den = kRates[rate].den;
    }
    out.drop_frame = drop_->GetValue();
    return out;
}

} // namespace luft::desk
