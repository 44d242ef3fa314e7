"""links.py TREE: every file that README and docs link to, or name in `code`, is there."""
import pathlib
import re
import sys

tree = pathlib.Path(sys.argv[1])
LINK = re.compile(r"\]\(([^)\s]+)\)|(?:src|href)=\"([^\"]+)\"")
CODE = re.compile(r"`([^`\n]+)`")
OURS = re.compile(r"^(core|app|tests|docs|sample-project|\.ci)/[\w./-]*\w$")
MADE_LATER = re.compile(r"^sample-project/out/|^build")
FENCE = re.compile(r"^```.*?^```", re.S | re.M)


def missing(page):
    text = page.read_text(encoding="utf-8")
    for groups in LINK.findall(text):
        link = groups[0] or groups[1]
        if re.match(r"[a-z]+:|#", link):
            continue
        if not (page.parent / link.split("#")[0]).exists():
            yield link
    for code in CODE.findall(FENCE.sub("", text)):
        name = code.split()[0] if code.split() else ""
        if OURS.match(name) and not MADE_LATER.match(name) and not (tree / name).exists():
            yield name


pages = sorted([*tree.glob("*.md"), *tree.glob("docs/**/*.md"), *tree.glob("sample-project/*.md")])
faults = [f"{page.relative_to(tree)} names '{link}', which isn't there." for page in pages for link in missing(page)]
print(*faults, f"{len(pages)} pages checked, {len(faults)} faults.", sep="\n")
sys.exit(1 if faults or not pages else 0)
