#include "desk/key_chart.h"

#include "base/text.h"
#include "desk/commands.h"
#include "desk/sheet_view.h"
#include "desk/text.h"
#include "desk/work/pages.h"

#include <wx/html/htmlwin.h>
#include <wx/html/htmprint.h>

namespace luft::desk {
namespace {

std::string rows_of(std::string_view menu) {
    std::string html;
    for (const auto& one : commands()) {
        if (menu != one.menu || one.key[0] == '\0') continue;
        wxString words = shown(one.words);
        words.Replace("&", "");
        words.Replace(shown("…"), "");
        html += "<tr><td nowrap><b>" + escape_markup(one.key) + "</b></td><td nowrap>" +
                escape_markup(typed(words)) + "</td><td>" + escape_markup(one.help) + "</td></tr>\n";
    }
    return html;
}

std::string chart(const sheet::Colours& c) {
    std::string html =
        "<html><body bgcolor=\"" + hex(c.paper) + "\" text=\"" + hex(c.ink) + "\"><h2>Keys</h2>\n";
    std::string menu;
    html += "<table cellpadding=\"3\">\n";
    for (const auto& one : commands()) {
        if (menu == one.menu) continue;
        menu = one.menu;
        wxString heading(menu);
        heading.Replace("&", "");
        const std::string rows = rows_of(menu);
        if (!rows.empty())
            html += "<tr><td colspan=\"3\"><br><b><u>" + typed(heading) + "</u></b></td></tr>\n" + rows;
    }
    return html + "</table>\n<p>Drag over the ribbon: a moment. Drag a breath, a switch or the end of a "
                  "phrase, note or "
                  "moment: it moves. Double click: write. Single letters work whenever you are not "
                  "writing.</p></body></html>";
}

} // namespace

void show_key_chart(wxWindow* parent) {
    wxDialog dialog(parent, wxID_ANY, "Keys", wxDefaultPosition, parent->FromDIP(wxSize(760, 680)),
                    wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER);
    auto* column = new wxBoxSizer(wxVERTICAL);
    auto* page = new wxHtmlWindow(&dialog);
    page->SetStandardFonts(parent->GetFont().GetPointSize());
    page->SetPage(shown(chart(system_colours())));
    column->Add(page, 1, wxEXPAND);
    auto* buttons = new wxBoxSizer(wxHORIZONTAL);
    auto* print = new wxButton(&dialog, wxID_ANY, shown("Print…"));
    print->Bind(wxEVT_BUTTON, [&](wxCommandEvent&) {
        wxHtmlEasyPrinting printing("Keys of Luftpause", &dialog);
        printing.PrintText(shown(chart(sheet::light_colours())));
    });
    buttons->Add(print, 0, wxALL, parent->FromDIP(8));
    buttons->AddStretchSpacer();
    buttons->Add(new wxButton(&dialog, wxID_CANCEL, "Close"), 0, wxALL, parent->FromDIP(8));
    column->Add(buttons, 0, wxEXPAND);
    dialog.SetSizer(column);
    dialog.CentreOnParent();
    dialog.ShowModal();
}

} // namespace luft::desk
