#include "export/cue_csv.h"

#include "base/text.h"
#include "export/csv.h"
#include "export/cue_rows.h"
#include "export/cue_time.h"
#include "script/others.h"

namespace luft::exports {
namespace {

std::string number(Seconds t) {
    return fixed(t.value(), 6);
}

} // namespace

std::string cue_csv(const script::Source& source, const script::CueSheet& sheet) {
    const bool several = !sheet.others.empty();
    std::vector<std::string> header = {"number",
                                       "kind",
                                       "programme_in",
                                       "programme_out",
                                       "programme_in_s",
                                       "programme_out_s",
                                       "media_in_s",
                                       "media_out_s",
                                       "speed",
                                       "title",
                                       "text"};
    if (several) header.emplace_back("performance");
    std::string out = csv_record(header);
    int n = 0;
    for (const CueRow& row : cue_rows(sheet)) {
        const Seconds length = seconds(row.end() - row.start());
        const bool stands = row.segment && row.segment->kind == script::SegmentKind::talk;
        const Seconds in = row.segment ? seconds(row.segment->media_start) : row.aside->media_start;
        const Seconds out_point = row.segment ? seconds(row.segment->media_end) : in + length;
        std::vector<std::string> fields = {
            std::to_string(++n),
            std::string(kind_word(row)),
            programme_timecode(sheet, row.start()),
            programme_timecode(sheet, row.end()),
            number(seconds(row.start())),
            number(seconds(row.end())),
            number(in),
            number(out_point),
            stands ? "" : fixed(row.segment ? row.segment->speed.as_double() : 1, 3),
            csv_words(row.segment ? row.segment->title : "Aside"),
            csv_words(row.segment ? row.segment->text : row.aside->text)};
        const auto& performance =
            row.segment ? script::performance_of(source, *row.segment) : source.performance;
        if (several) fields.push_back(csv_words(performance.label));
        out += csv_record(fields);
    }
    return out;
}

} // namespace luft::exports
