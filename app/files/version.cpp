#include "files/version.h"

namespace luft::files {

std::string version() {
    return LUFT_VERSION;
}

} // namespace luft::files
