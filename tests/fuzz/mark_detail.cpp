// Any text as the values of a mark: what is read as one is written and read again to the same.
#include "project/mark_detail.h"

#include "base/error.h"
#include "base/text.h"
#include "fuzz/target.h"

using namespace luft;
using namespace luft::project;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) return 0;
    const auto kind = static_cast<MarkKind>(data[0] % 4);
    const std::string detail(fuzz::text_of(data + 1, size - 1));
    const Span span{Seconds(1), Seconds(2)};
    Mark mark;
    try {
        DetailReader().put(mark, kind, span, {0.5}, "heard", detail);
    } catch (const Error& e) {
        fuzz::demand(e.fault() == Fault::unreadable, "what is no mark is told as damage");
        return 0;
    }
    std::string written;
    try {
        written = detail_text(mark);
    } catch (const Error& e) {
        fuzz::demand(e.fault() == Fault::bad_request, "numbers without end are refused");
        return 0;
    }
    Mark again;
    DetailReader().put(again, kind, span, {0.5}, "heard", written);
    fuzz::demand(detail_text(again) == written, "a mark reads back to the same");
    return 0;
}
