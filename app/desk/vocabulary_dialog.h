// The tag vocabulary: what there is, and the coach's own facets and shades.
#pragma once

#include "desk/work/session.h"

#include <wx/treectrl.h>
#include <wx/wx.h>

#include <functional>

namespace luft::desk {

class VocabularyDialog : public wxDialog {
  public:
    VocabularyDialog(wxWindow* parent, Session& session,
                     std::function<void(const std::function<void()>&)> guarded);

  private:
    void fill(const std::string& open_facet);
    void tell();
    void add_facet();
    void add_shade();
    [[nodiscard]] std::string chosen_facet() const;

    Session& session_;
    std::function<void(const std::function<void()>&)> guarded_;
    wxTreeCtrl* tree_;
    wxStaticText* about_;
};

/// A key made of a name: "Glottal fry (low)" -> "glottal-fry-low". Empty when the name has no letter.
std::string key_of(const std::string& name);

} // namespace luft::desk
