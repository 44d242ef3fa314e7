#include "desk/profile_view.h"

#include "desk/sheet_view.h"
#include "desk/text.h"
#include "desk/work/pages.h"

namespace luft::desk {

ProfileView::ProfileView(wxWindow* parent, Session& session, std::function<void(Span)> play)
    : wxHtmlWindow(parent, wxID_ANY), session_(session), play_(std::move(play)) {
    SetStandardFonts(parent->GetFont().GetPointSize());
    SetBorders(FromDIP(16));
    session_.watch([this](const Session::Change& change) {
        stale_ = stale_ || change.project || change.shown || change.contents;
        if (IsShownOnScreen()) bring_up_to_date();
    });
}

void ProfileView::bring_up_to_date() {
    if (!stale_) return;
    stale_ = false;
    int x = 0, y = 0;
    GetViewStart(&x, &y);
    SetPage(shown(profile_page(profile::make_profile(session_.source()), system_colours())));
    Scroll(x, y);
}

void ProfileView::OnLinkClicked(const wxHtmlLinkInfo& link) {
    if (const auto span = linked_span(typed(link.GetHref()))) play_(*span);
}

} // namespace luft::desk
