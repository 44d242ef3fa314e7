#include "desk/text.h"

#include "sheet/breakable.h"

namespace luft::desk {

wxString shown(std::string_view text) {
    const std::string few = sheet::with_few_marks(text);
    return wxString::FromUTF8(few.data(), few.size());
}

} // namespace luft::desk
