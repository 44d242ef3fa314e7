#!/bin/bash
# layers.sh PLAN TREE INCLUDES COMPILER: for every two layers X and Y, a file of the one line
# `#include "Y/header.h"` gets through the preprocessor with X's own include path when the plan lets X see Y, and else fails
# because the header isn't there.
set -euo pipefail
plan="$1" tree="$2" includes="$3" compiler="$4"
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
faults=0 checked=0

complain() {
    echo "$*" >&2
    faults=$((faults + 1))
}

layers="$(sed -n 's/^\([a-z]*\):.*/\1/p' "$plan")"
for from in $layers; do
    path=()
    while read -r folder; do
        [ -z "$folder" ] || path+=(-I "$folder")
    done < "$includes/$from.includes"
    allowed=" $from $(sed -n "s/^$from://p" "$plan") "
    for to in $layers cli; do
        folder="$tree/core/$to"
        [ "$to" != cli ] || folder="$tree/app/cli" # nothing in core/ may see the programs
        header="$to/$(basename "$(find "$folder" -maxdepth 1 -name '*.h' | sort | head -n 1)")"
        echo "#include \"$header\"" > "$work/one.cpp"
        checked=$((checked + 1))
        if "$compiler" -std=c++20 -E -o /dev/null "${path[@]}" "$work/one.cpp" 2> "$work/said"; then
            [[ "$allowed" == *" $to "* ]] || complain "$from can include $header, and must not."
        elif [[ "$allowed" == *" $to "* ]]; then
            complain "$from can't include $header, and should: $(head -n 1 "$work/said")"
        elif ! grep -qF "$header: No such file or directory" "$work/said"; then
            complain "$from can't include $header, but not because it is hidden: $(head -n 1 "$work/said")"
        fi
    done
done
echo "$checked pairs of layers checked, $faults faults."
[ "$checked" -gt 0 ] && [ "$faults" -eq 0 ]
