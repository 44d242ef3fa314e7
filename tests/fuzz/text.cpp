// Any bytes as text on its way out: into HTML, into captions, and cleaned for the project file.
#include "base/text.h"

#include "base/shown_text.h"
#include "base/typed_time.h"
#include "fuzz/target.h"

using namespace luft;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view bytes = fuzz::text_of(data, size);
    const std::string clean = valid_utf8(bytes);
    fuzz::demand(is_utf8(clean), "cleaned text is UTF-8");
    fuzz::demand(!is_utf8(bytes) || clean == bytes, "sound text stays as it is");
    const std::string safe = escape_markup(clean);
    fuzz::demand(is_utf8(safe), "escaped text is UTF-8");
    fuzz::demand(safe.find_first_of("<>\"'") == std::string::npos, "escaped text opens and ends nothing");
    const std::string out = shown(bytes);
    fuzz::demand(is_utf8(out) && shown(out) == out, "shown text stays as it is");
    fuzz::demand(out.find_first_of("\x1B\x07\x08\x7F") == std::string::npos, "shown text gives no orders");
    fuzz::demand(with_directions_closed(clean).size() <= 4 * clean.size(), "closing signs don't multiply");
    (void)shown_json(clean);
    (void)count_words(clean);
    if (const auto time = typed_time(bytes)) {
        fuzz::demand(time->value() >= 0, "a typed time is none before the start");
        (void)clock_text(*time);
        (void)timestamp(*time);
    }
    return 0;
}
