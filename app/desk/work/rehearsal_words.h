// What the rehearsal's page says, in words.
#pragma once

#include "desk/work/rehearsal.h"

#include <string>

namespace luft::desk {

/// "1:02", whole seconds; from an hour on "1:01:02". Nothing is below 0:00.
std::string minutes(Seconds t);

/// "Stop 2 of 7: breathy onset", "Opening", "Again at half speed", "Music".
std::string step_words(const Rehearsal& rehearsal);

/// What comes after this step: "then 0:34 of music", "then Stop 3: vowel", "then the end".
std::string next_words(const Rehearsal& rehearsal);

/// "0:12 of 0:18", past the planned time "0:21, 0:03 over the planned 0:18".
std::string step_time_words(const Rehearsal& rehearsal, Seconds now);

/// "Programme 3:42 of 12:10", with ", 0:04 later than planned" where it is.
std::string programme_words(const Rehearsal& rehearsal, Seconds now);

/// The difference of a measured talk to its plan: "0:03 longer", "0:02 shorter", "as planned", "not
/// measured".
std::string difference_words(const Rehearsal::Talk& talk);

/// What the rehearsal came to: "Measured 5 of 7 talks. They take 2:31 instead of 2:40; the programme would
/// run 9:12."
std::string sum_words(const Rehearsal& rehearsal);

} // namespace luft::desk
