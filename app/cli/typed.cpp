#include "cli/typed.h"

#include "base/bytes.h"
#include "base/error.h"
#include "base/text.h"
#include "base/typed_time.h"

#include <span>
#include <string_view>

namespace luft::cli {
namespace {

/// Text files are short: words of a song, a remark. More than this is not one.
constexpr std::int64_t kMostTextBytes = 4 << 20;

} // namespace

Seconds parse_time(const std::string& text) {
    if (const auto time = typed_time(text)) return *time;
    throw UsageError("'" + text + "' is not a time; write seconds or minutes:seconds, as 62.5 or 1:02.5");
}

std::string read_text_file(const std::string& file) {
    const auto bytes = open_file(file);
    if (bytes->size() > kMostTextBytes)
        throw Error(Fault::unreadable, "'" + file + "' is too large for a text.");
    std::string text(static_cast<std::size_t>(bytes->size()), '\0');
    std::size_t got = 0;
    while (got < text.size()) {
        const std::size_t n = bytes->read_at(static_cast<std::int64_t>(got),
                                             std::as_writable_bytes(std::span(text).subspan(got)));
        if (n == 0) break;
        got += n;
    }
    text.resize(got);
    if (!is_utf8(text))
        throw Error(Fault::unreadable, "'" + file + "' is not UTF-8 text.",
                    "Save it as UTF-8 and try again.");
    text.erase(text.find_last_not_of("\r\n") + 1);
    return text;
}

} // namespace luft::cli
