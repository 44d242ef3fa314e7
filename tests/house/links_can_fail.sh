#!/bin/bash
# links_can_fail.sh: the link check passes a page whose files are there and complains of one whose aren't.
set -euo pipefail
here="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)"
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
mkdir -p "$work/docs" "$work/core"
touch "$work/docs/guide.md" "$work/core/here.h"

echo 'See [the guide](docs/guide.md#top), [a standard](https://example.org/x) and `core/here.h`.' > "$work/README.md"
python3 "$here/links.py" "$work" > /dev/null
for broken in '[gone](docs/gone.md)' '`core/gone.h`' '<img src="docs/gone.png">'; do
    echo "$broken" > "$work/README.md"
    if python3 "$here/links.py" "$work" > /dev/null; then
        echo "The link check passes: $broken" >&2
        exit 1
    fi
done
