#!/bin/bash
# layers_can_fail.sh TREE INCLUDES COMPILER: the layer check complains of both kinds of fault, each by name.
set -euo pipefail
here="$(dirname "${BASH_SOURCE[0]}")"
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT

# A plan that the build breaks: it lets base see marks, which it can't, and hides base from signal.
printf '%s\n' 'base: marks' 'signal:' 'marks: base signal' > "$work/plan"
if "$here/layers.sh" "$work/plan" "$@" 2> "$work/said"; then
    echo "The layer check passes a house that breaks its plan." >&2
    exit 1
fi
grep -q "^base can't include marks/.*, and should" "$work/said"
grep -q "^signal can include base/.*, and must not" "$work/said"
