#!/bin/bash
# rules_can_fail.sh: each rule complains of a house that breaks just it, and none of one that keeps them.
set -euo pipefail
here="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)"
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
mkdir -p "$work/core/voice" "$work/core/media" "$work/core/project" "$work/core/signal" "$work/app/desk/play"

echo '#include <libavformat/avformat.h>' > "$work/core/media/a.cpp"
echo '#include <sqlite3.h>' > "$work/core/project/a.cpp"
echo '#include <rubberband/RubberBandStretcher.h>' > "$work/core/signal/a.cpp"
echo '#include <SDL.h>' > "$work/app/desk/play/a.cpp"
printf '%s\n' '#include "base/units.h"' 'int n = std::snprintf(a, 1, "x");' > "$work/core/voice/a.cpp"
"$here/rules.sh" "$work" > /dev/null

# line, and words of the complaint
breaks() {
    echo "$1" > "$work/core/voice/b.cpp"
    if "$here/rules.sh" "$work" > /dev/null 2> "$work/said"; then
        echo "No rule complains of: $1" >&2
        exit 1
    fi
    grep -qF "$2" "$work/said" || { echo "Another rule complains of: $1" >&2; exit 1; }
}
breaks '#include <libswscale/swscale.h>' "FFmpeg"
breaks '#include "sqlite3.h"' "SQLite"
breaks '#include <pango/pangocairo.h>' "Cairo"
breaks '#include <rubberband/RubberBandStretcher.h>' "Rubber Band"
breaks '#include <SDL.h>' "SDL"
breaks '#include <SDL2/SDL_audio.h>' "SDL"
breaks '#include "../base/units.h"' "folder/file.h"
breaks '#include "pitch.h"' "folder/file.h"
breaks '#include <wx/wx.h>' "windows"
breaks 'std::cout << 1;' "prints"
breaks 'printf("x");' "prints"
breaks 'std::getenv("HOME");' "environment"
