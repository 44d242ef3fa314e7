#include "export/cue_time.h"

#include "base/text.h"

namespace luft::exports {

std::string rate_words(const script::CueSheet& sheet) {
    const double rate = sheet.frame_rate.as_double();
    const std::string number =
        sheet.frame_rate.den() == 1 ? std::to_string(sheet.frame_rate.num()) : fixed(rate, rate < 24 ? 3 : 2);
    return number + " frames a second" + (sheet.drop_frame ? ", drop-frame" : "");
}

} // namespace luft::exports
