// The whole programme in one bar, and what it takes: running time, talk, how much is quoted and how much may
// be.
#pragma once

#include "script/cue_sheet.h"

#include <wx/wx.h>

#include <functional>
#include <optional>
#include <string>

namespace luft::desk {

/// "Runs 3:43.1, of it 2:25.6 talk." and "Quotes 64 % of the recording (at most 50 %), 38.2 s at the longest
/// without a word (at most 30 s)."
std::string budget_words(const script::CueSheet& sheet, const project::ScriptSettings& settings);

class BudgetBar : public wxWindow {
  public:
    /// `go_to` gets the segment that was clicked.
    BudgetBar(wxWindow* parent, std::function<void(std::size_t segment)> go_to);

    void show(const script::CueSheet& sheet, const project::ScriptSettings& settings);
    void select(std::optional<project::ScriptItemId> item);

  private:
    void paint(wxPaintEvent&);
    [[nodiscard]] double x_of(Rational programme) const;

    std::function<void(std::size_t)> go_to_;
    script::CueSheet sheet_;
    project::ScriptSettings settings_;
    std::optional<project::ScriptItemId> selected_;
};

} // namespace luft::desk
