#!/usr/bin/env python3
"""Hostile texts in every text of a project, and every file that is made of it, read back:
    hostile.py PROGRAM SAMPLE_MEDIA
Writes its rows to $LUFT_FAULT_ROWS; LUFT_LONG=1 puts every text everywhere, else each stands somewhere."""
import concurrent.futures
import contextlib
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

import project
import readers
import texts

sys.path[:0] = [str(pathlib.Path(__file__).parent.parent), str(pathlib.Path(__file__).parents[2] / "desk")]
from fault_row import LONG, Row, end  # noqa: E402
from window import Screen  # noqa: E402

PROGRAM, MEDIA = sys.argv[1], pathlib.Path(sys.argv[2])
COMMAND = "ctest --test-dir build -R faults_text"
SECONDS = 60
# What is left of a text for people, per line: no signs that a terminal takes for orders, none that turn what follows.
ORDERS = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f]")


def program(*arguments):
    try:
        return subprocess.run([PROGRAM, *map(str, arguments)], capture_output=True, timeout=SECONDS)
    except subprocess.TimeoutExpired as late:
        return subprocess.CompletedProcess(late.cmd, 1, b"", b"not done in time")


def open_directions(line):
    """How many directions (Unicode UAX #9, 3.3.2) a line leaves open."""
    levels = []
    for c in line:
        if c in "\u202a\u202b\u202d\u202e\u2066\u2067\u2068":
            levels.append(c)
        elif c == "\u202c" and levels and levels[-1] in "\u202a\u202b\u202d\u202e":
            levels.pop()
        elif c == "\u2069":
            while levels and levels.pop() not in "\u2066\u2067\u2068":
                pass
    return len(levels)


FORMATS = ["profile-html", "profile-text", "profile-json", "cues-html", "cues-pdf", "cues-csv", "cues-json", "cues-text",
           "captions", "captions-srt", "chapters", "edl", "otio", "teleprompter", "description", "handout", "handout-pdf",
           "sheet-pdf", "sheet-pictures", "marks-csv", "marks-json", "analysis"]
COMPARED = ["compare.html", "compare.json", "compare.pdf", "compare.txt"]
VERBS = [["piece"], ["performance", "list"], ["marks", "--performance", "1"], ["moment", "list", "--performance", "1"],
         ["vocabulary"], ["profile", "--performance", "1"], ["script", "show", "--performance", "1"],
         ["cues", "--performance", "1"], ["beside"], ["check"]]


def make_all(file, folder, labels):
    """Every format of the first performance, side by side; {name: file}, and complaints."""
    folder.mkdir()
    known = {line.split()[0] for line in program("export", "--help").stdout.decode().split("Formats:")[1].splitlines() if line.strip()}
    endings = {"profile-html": "profile.html", "cues-html": "cues.html", "captions": "captions.vtt", "captions-srt": "captions.srt",
               "edl": "edit.edl", "otio": "edit.otio", "teleprompter": "teleprompter.html", "handout": "handout.html",
               "sheet-pictures": "sheet", "chapters": "chapters.txt", "analysis": "analysis.json", "description": "description.txt"}
    missing = known - set(FORMATS) - {"guide", "stills", "stills-jpeg"}
    assert not missing, f"formats without a reader here: {missing}"

    def one(format):
        out = folder / endings.get(format, re.sub("-(?=[a-z]+$)", ".", format).replace(".text", ".txt"))
        return out, program("export", file, "--performance=" + labels[0], "--as", format, "--out", out)

    def compared(name):
        return folder / name, program("compare", file, "--as", name.split(".")[1].replace("txt", "text"), "--out", folder / name, "--", *labels)

    with concurrent.futures.ThreadPoolExecutor(2) as two:
        made = list(two.map(one, FORMATS)) + list(two.map(compared, COMPARED))
        made.append((folder / "beside.html", program("beside", file, "--as", "html", "--out", folder / "beside.html")))
    return made


def read_all(made, row, label):
    """{name: (shape, words)} of what was made; a file that its reader doesn't take is a loss."""
    out = {}
    for file, said in made:
        row.must(said.returncode == 0, f"{label}: {file.name}: {said.stderr[:200]!r}")
        if said.returncode != 0:
            continue
        try:
            out[file.name] = readers.reader_of(file.name)(file)
        except Exception as fault:  # whatever the reader says
            detail = getattr(fault, "stderr", b"") or b""
            row.must(False, f"{label}: {file.name} isn't whole: {str(fault)[:200]} {detail[:300]!r}")
    return out


def compare(row, label, hostile, twin, put, put_twin):
    for name, (shape, words) in hostile.items():
        if name not in twin:
            continue
        row.must(shape == twin[name][0], f"{label}: {name} is built otherwise: {difference(shape, twin[name][0])}")
        if words is None or twin[name][1] is None:
            continue
        have, have_twin = texts.core(words), texts.core(twin[name][1])
        for text, other in {(str(put[cell]), str(put_twin[cell])) for cell in put if isinstance(put[cell], str)}:
            wanted, wanted_twin = texts.core(text), texts.core(other)
            if wanted_twin in have_twin:
                row.must(wanted in have, f"{label}: {name} hasn't {text[:60]!r}")
        if name.rpartition(".")[2] in ("vtt", "srt", "edl", "txt"):
            for line in words.splitlines():
                row.must(not ORDERS.search(line), f"{label}: {name} gives orders: {line[:60]!r}")
                row.must(not open_directions(line), f"{label}: {name} turns what follows: {line[:80]!r}")


def difference(a, b):
    if not isinstance(a, list) or not isinstance(b, list):
        return f"{a!r:.80} {b!r:.80}"
    for one, other in zip(a, b):
        if one != other:
            return f"{one!r:.120} for {other!r:.120}"
    return f"{len(a)} for {len(b)} parts"


def labels_of(file):
    import sqlite3
    with sqlite3.connect(file) as base:
        base.text_factory = bytes
        return [os.fsdecode(label) for label, in base.execute("SELECT label FROM performance ORDER BY id")]


def on_terminal(row, label, file, twin):
    """What the verbs say, to a person and in JSON."""
    for verb in VERBS:
        for more in ([], ["--json"]):
            def say(project_file):
                words = [labels_of(project_file)[0] if word == "1" else word for word in verb]
                at = words.index("--performance") if "--performance" in words else None
                if at is not None:
                    words[at : at + 2] = ["--performance=" + words[at + 1]]
                return program(words[0], project_file, *words[1:], *more)

            said, harmless = say(file), say(twin)
            name = " ".join(verb + more)
            if harmless.returncode == 2:  # this verb has no JSON
                continue
            row.must(said.returncode == harmless.returncode, f"{label}: {name}: {said.stderr[:200]!r}")
            text = said.stdout.decode("utf-8", "surrogateescape")
            row.must(not ORDERS.search(text), f"{label}: {name} gives orders: {ORDERS.search(text)}")
            row.must(not any("\udc80" <= c <= "\udcff" for c in text), f"{label}: {name} isn't UTF-8")
            if more:
                continue
            for line in text.split("\n"):
                row.must(not open_directions(line), f"{label}: {name} turns what follows: {line[:80]!r}")
            if verb[-1] == "list" or verb[0] in ("marks", "performance") or "list" in verb:
                row.must(text.count("\n") == harmless.stdout.count(b"\n"), f"{label}: {name} has more lines than things")


def round_of(row, template, folder, label, choose, choose_twin):
    hostile, twin = folder / f"{label}.luft", folder / f"{label}-twin.luft"
    put = project.fill(template, hostile, choose)
    put_twin = project.fill(template, twin, choose_twin)
    made = read_all(make_all(hostile, folder / label, labels_of(hostile)), row, label)
    made_twin = read_all(make_all(twin, folder / (label + "-twin"), labels_of(twin)), row, label + " harmless")
    row.runs += len(put)
    compare(row, label, made, made_twin, put, put_twin)
    on_terminal(row, label, hostile, twin)
    for made_folder in (label, label + "-twin"):
        shutil.rmtree(folder / made_folder)


@contextlib.contextmanager
def furnished(fault, how):
    """A row, and a folder with a project for it: (row, folder, project)."""
    with Row("hostile input", fault, how, COMMAND) as row, tempfile.TemporaryDirectory() as name:
        template = pathlib.Path(name) / "template.luft"
        project.make(PROGRAM, MEDIA, template)
        yield row, template.parent, template


def in_window(file, home):
    """The real window, which opens the project, scrolls through it and ends."""
    screen = Screen()
    try:
        environment = {"PATH": os.environ["PATH"], "DISPLAY": screen.display, "HOME": str(home), "XDG_CONFIG_HOME": str(home),
                       "GDK_BACKEND": "x11", "GSETTINGS_BACKEND": "memory", "NO_AT_BRIDGE": "1", "SDL_AUDIODRIVER": "dummy"}
        return subprocess.run([PROGRAM + "-desk", "--measure", "10", file], env=environment, capture_output=True, timeout=SECONDS)
    except subprocess.TimeoutExpired as late:
        return subprocess.CompletedProcess(late.cmd, 1, b"", b"not done in time")
    finally:
        screen.close()


def endless_texts():
    """One text of each column is as long as a book; all formats come in time, and the window opens."""
    letters = 250_000 if LONG else 20_000
    how = (f"{letters:,} letters in one word, one paragraph or as marks on one letter, in one text of each kind; every file format, "
           f"and the window opened, within {SECONDS} s")
    with furnished("A text as long as a book where a word or a sentence is meant", how) as (row, folder, template):
        long_texts = texts.endless(letters)
        for turn in range(len(long_texts) if LONG else 1):
            filled = {("performance", "label")}

            def choose(_, table, column):
                if (table, column) in filled:
                    return "short"
                filled.add((table, column))
                return long_texts[(len(filled) + turn) % len(long_texts)]

            file = folder / f"turn{turn}.luft"
            project.fill(template, file, choose)
            for out, said in make_all(file, folder / f"turn{turn}", labels_of(file)):
                row.runs += 1
                row.must(said.returncode == 0, f"{out.name}: {said.stderr[:200]!r}")
            said = in_window(file, folder)
            row.runs += 1
            row.must(said.returncode == 0 and b"opened to first paint" in said.stdout, f"the window: {said.stderr[:200]!r}")
            shutil.rmtree(folder / f"turn{turn}")


def hostile_labels():
    """Labels name folders and files: whatever they are, all files come, and lie in the folder that was asked for."""
    how = ("both performances labelled with two of %d texts, the titles, too; luftpause export --all, twice; as many files as with "
           "plain labels, and none anywhere else" % len(texts.texts()))
    with furnished("Labels that would name other folders and files", how) as (row, folder, template):
        names = [text for _, text in texts.texts()]
        if not LONG:
            names = [text for what, text in texts.texts() if what in ("a way out", "an option")]
        wanted = None
        for turn, pair in enumerate([("A", "B")] + [(names[i], names[(i + 1) % len(names)]) for i in range(0, len(names), 2)]):
            home = folder / "out"
            file = folder / "p.luft"
            project.fill(template, file, lambda n, table, column: pair[n % 2] if column in ("label", "title") else "words")
            for _ in range(min(turn, 1) + 1):  # the second time over what is there
                said = program("export", file, "--all", home / "all")
                row.must(said.returncode == 0, f"{pair}: {said.stderr[:200]!r}")
            made = sorted(str(f.relative_to(home / "all")) for f in home.rglob("*") if f.is_file())
            wanted = wanted or len(made)
            row.must(len(made) == wanted, f"{pair}: {len(made)} files instead of {wanted}")
            for one in made:
                row.must(re.fullmatch(r"[^\x00-\x1f/]+(/[^\x00-\x1f/]+)*", one) is not None and ".." not in one.split("/"),
                         f"{pair}: {one!r}")
            row.runs += min(turn, 1) + 1
            shutil.rmtree(home)
        row.must(sorted(f.name for f in folder.iterdir()) ==
                 ["over-water-marnik.mkv", "over-water-vasslow.mp4", "p.luft", "template.luft"], "something lies outside")


def main():
    how = ("every text of a project replaced by one of %d, by another SQLite%s; every file format and the verbs' tables read "
           "back by Python, xmllint, FFmpeg and Poppler: text whole, as many rows, elements, cues and chapters as with "
           "harmless text" % (len(texts.texts()), ", each in each place in turn, and broken characters" if LONG else ""))
    with furnished("Markup, control signs, formulas and turned directions in every text of a project", how) as (row, folder, template):
        all_texts = [text for _, text in texts.texts()]
        for turn in range(len(all_texts) if LONG else 1):
            round_of(row, template, folder, f"turn{turn}", lambda n, t, c: all_texts[(n + turn) % len(all_texts)],
                     lambda n, t, c: texts.harmless(all_texts[(n + turn) % len(all_texts)]))
        if LONG:
            round_of(row, template, folder, "broken", lambda n, t, c: texts.BROKEN[n % len(texts.BROKEN)],
                     lambda n, t, c: texts.harmless(texts.BROKEN[n % len(texts.BROKEN)].decode("utf-8", "replace")).encode())
    endless_texts()
    hostile_labels()
    end()


main()
