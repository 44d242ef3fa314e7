#!/bin/bash
# rules.sh TREE: what may stand where in the sources.
set -euo pipefail
cd "$1"
faults=0

# forbid WORDS PATTERN FOLDER... [-- FILE-PATTERN]: no line of the sources there matches, but in the files
# that FILE-PATTERN excepts.
forbid() {
    local words="$1" pattern="$2" except='^$'
    shift 2
    local folders=()
    while [ $# -gt 0 ]; do
        if [ "$1" = -- ]; then
            except="$2"
            break
        fi
        [ ! -d "$1" ] || folders+=("$1")
        shift
    done
    local found
    found="$(grep -rnE --include='*.h' --include='*.cpp' -e "$pattern" "${folders[@]}" | grep -vE "$except" || true)"
    [ -z "$found" ] && return
    echo "$words:" >&2
    echo "$found" >&2
    faults=$((faults + 1))
}

all=(core app tests sample-project)
forbid "FFmpeg's headers belong into core/media" 'include *[<"]lib(av|sw)' "${all[@]}" -- '^(core|tests)/media/'
forbid "SQLite's header belongs into core/project" 'include *[<"]sqlite3' "${all[@]}" -- '^(core|tests)/project/'
forbid "Cairo's and Pango's headers belong into core/sheet" 'include *[<"](cairo|pango)/' "${all[@]}" -- '^(core|tests)/sheet/'
# The benchmark of pairs warps with the library itself, as a reference.
forbid "Rubber Band's header belongs into core/signal" 'include *[<"]rubberband/' "${all[@]}" -- '^(core/signal|tests/bench/pairs)/'
forbid "SDL's header belongs into app/desk/play" 'include *[<"](SDL2/)?SDL' "${all[@]}" -- '^app/desk/play/'
forbid "Includes are written folder/file.h" 'include *"\.\.?/' "${all[@]}"
forbid "Includes are written folder/file.h" 'include *"[^/"]*"' core app
forbid "core/ knows nothing of windows" 'include *[<"]wx/' core
forbid "core/ prints nothing" '\b(cout|cerr|clog)\b|\b(printf|fprintf|vprintf|vfprintf|puts|fputs|putchar|perror)\s*\(' core
forbid "core/ doesn't read the environment" '\b(secure_)?getenv\s*\(' core

echo "$faults rules broken."
[ "$faults" -eq 0 ]
