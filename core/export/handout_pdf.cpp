#include "export/handout_pdf.h"

#include "export/drill_places.h"
#include "export/handout.h"
#include "export/paper_page.h"
#include "export/phrase_pictures.h"

namespace luft::exports {
namespace {

constexpr double kIndent = 24, kStep = 28, kBesideBar = 12;

class Printer {
  public:
    Printer(sheet::Flow& flow, const Print& print, const profile::Profile& profile,
            const PhrasePictures& pictures)
        : flow_(flow), print_(print), c_(print.colours), profile_(profile), pictures_(pictures) {}

    void lead() {
        flow_.text(words_in(std::string(handout_lead()), print_.spoken, c_.ink), 0, 4);
        if (profile_.drills.empty())
            flow_.text(words_in("This recording asks for no drill so far.", print_.plain, c_.soft));
    }

    void drill(const vocabulary::Drill& d, std::size_t number) {
        flow_.space(12);
        flow_.keep();
        sheet::FlowRow head;
        head.cells = {{0, kIndent - 1, {words_in(std::to_string(number), print_.section, c_.soft)}},
                      {kIndent, across() - kIndent, {words_in(d.title, print_.section, c_.ink)}}};
        head.cells[1].texts[0].heading = true;
        if (!d.aim.empty()) head.cells[1].texts.push_back(words_in(d.aim, print_.plain, c_.ink, 2));
        head.below = 3;
        flow_.row(std::move(head));
        for (std::size_t i = 0; i < d.steps.size(); ++i)
            step(std::to_string(i + 1) + ".", d.steps[i]);
        if (!d.caution.empty()) beside_bar("Take care: " + d.caution, {0, 4, c_.watch, true});
        places(d.key);
        flow_.end_keep();
    }

  private:
    [[nodiscard]] double across() const { return flow_.paper().room_across(); }

    void step(const std::string& number, const std::string& words) {
        sheet::FlowRow row;
        row.cells = {{kIndent, kStep - 1, {words_in(number, print_.plain, c_.soft)}},
                     {kIndent + kStep, across() - kIndent - kStep, {words_in(words, print_.plain, c_.ink)}}};
        row.below = 2;
        flow_.row(std::move(row));
    }

    void beside_bar(const std::string& words, sheet::Bar bar) {
        sheet::FlowRow row;
        bar.left = kIndent;
        row.cells = {
            {kIndent + kBesideBar, across() - kIndent - kBesideBar, {words_in(words, print_.plain, c_.ink)}}};
        row.bar = bar;
        row.above = 2;
        row.below = 4;
        flow_.row(std::move(row));
    }

    void places(const std::string& drill) {
        const auto all = drill_places(profile_, drill);
        if (all.empty()) return;
        std::string words = "Hear what it is for";
        for (const auto& place : all)
            words += "\n" + place_time(place) + (place.words.empty() ? "" : ": " + place.words);
        beside_bar(words, {0, 3, c_.chest, false});
        const double zoom = across() / pictures_.width();
        for (const auto& phrase : pictures_.of(all))
            flow_.picture(pictures_.height(phrase) * zoom,
                          [&pictures = pictures_, phrase, zoom](sheet::Canvas& canvas) {
                              canvas.zoom(zoom);
                              pictures.draw(canvas, phrase);
                          });
    }

    sheet::Flow& flow_;
    const Print& print_;
    const sheet::Colours& c_;
    const profile::Profile& profile_;
    const PhrasePictures& pictures_;
};

} // namespace

void handout_pdf(const profile::Profile& profile, const profile::Source& source,
                 const std::filesystem::path& file, const Progress& progress) {
    const PaperHead head{
        .kind = "To practise",
        .title = profile.piece.empty() ? "Untitled" : profile.piece,
        .subtitle = profile.performer.empty() ? "" : "after the recording sung by " + profile.performer,
        .facts = handout_facts(profile)};
    const PhrasePictures pictures(source, kHandoutWidth);
    write_paper(
        file, head,
        [&](sheet::Flow& flow, const Print& print) {
            Printer printing(flow, print, profile, pictures);
            printing.lead();
            for (std::size_t i = 0; i < profile.drills.size(); ++i)
                printing.drill(profile.drills[i], i + 1);
            if (profile.drills.empty()) return;
            flow.space(8);
            flow.text(
                words_in("Times are minutes and seconds of the recording; the place is marked in its line of "
                         "the song sheet.",
                         print.small, print.colours.soft));
        },
        progress);
}

} // namespace luft::exports
