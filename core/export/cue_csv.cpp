#include "export/cue_csv.h"

#include "base/text.h"
#include "export/csv.h"
#include "export/cue_rows.h"
#include "export/cue_time.h"

namespace luft::exports {
namespace {

std::string number(Seconds t) {
    return fixed(t.value(), 6);
}

} // namespace

std::string cue_csv(const script::CueSheet& sheet) {
    std::string out = csv_record({"number", "kind", "programme_in", "programme_out", "programme_in_s",
                                  "programme_out_s", "media_in_s", "media_out_s", "speed", "title", "text"});
    int n = 0;
    for (const CueRow& row : cue_rows(sheet)) {
        const Seconds length = seconds(row.end() - row.start());
        const bool stands = row.segment && row.segment->kind == script::SegmentKind::talk;
        const Seconds in = row.segment ? seconds(row.segment->media_start) : row.aside->media_start;
        const Seconds out_point = row.segment ? seconds(row.segment->media_end) : in + length;
        out += csv_record({std::to_string(++n), std::string(kind_word(row)),
                           programme_timecode(sheet, row.start()), programme_timecode(sheet, row.end()),
                           number(seconds(row.start())), number(seconds(row.end())), number(in),
                           number(out_point),
                           stands ? "" : fixed(row.segment ? row.segment->speed.as_double() : 1, 3),
                           csv_words(row.segment ? row.segment->title : "Aside"),
                           csv_words(row.segment ? row.segment->text : row.aside->text)});
    }
    return out;
}

} // namespace luft::exports
