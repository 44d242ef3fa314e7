"""A project whose every text is hostile: made by the program, then written to with another SQLite."""
import json
import pathlib
import shutil
import sqlite3
import subprocess

# Every column that holds words; JSON columns apart.
COLUMNS = [("piece", "title"), ("piece", "writer"), ("piece", "music_key"), ("piece", "metre"), ("piece", "words"),
           ("performance", "label"), ("performance", "performer"), ("performance", "source"), ("performance", "permission"),
           ("facet", "name"), ("facet", "description"), ("shade", "name"), ("shade", "description"),
           ("drill", "title"), ("drill", "aim"), ("drill", "caution"),
           ("moment", "remark"), ("moment", "evidence"), ("script_item", "text"), ("mark", "evidence"),
           ("sung_word", "text"), ("journal_entry", "label")]


def make(program, media, file):
    """Two performances, moments, and a script for the first."""
    def say(*arguments):
        subprocess.run([program, *map(str, arguments)], check=True, capture_output=True)

    say("new", file, "--title", "Over Water", "--words", media.parent / "words.txt")
    for label, name in (("A", "over-water-vasslow.mp4"), ("B", "over-water-marnik.mkv")):
        short = file.parent / name
        subprocess.run(["ffmpeg", "-nostdin", "-v", "error", "-i", media / name, "-t", "16", "-c", "copy", "-y", short], check=True)
        say("add", file, short, "--label", label, "--partial")
    for start in (2, 8):
        say("moment", file, "add", "--performance", "A", "--from", start, "--to", start + 2, "--verdict", "watch",
            "--shade", "onset:glottal", "--remark", "Listen.")
    say("script", file, "draft", "--performance", "A")


def cells(file):
    """(table, column, row id) of every text, in a fixed order."""
    with sqlite3.connect(file) as base:
        return [(table, column, row) for table, column in COLUMNS
                for row, in base.execute(f"SELECT rowid FROM {table} WHERE {column} IS NOT NULL ORDER BY rowid")]


def fill(template, file, choose):
    """A copy with choose(n, table, column) as the n-th text, str or bytes; steps of drills likewise. {cell: text}"""
    shutil.copy(template, file)
    put = {}
    base = sqlite3.connect(file)
    for n, (table, column, row) in enumerate(cells(template)):
        text = choose(n, table, column)
        if column == "label" and table == "performance":  # unique, and no argument of a program has a NUL
            text = text.replace("\0", "") if isinstance(text, str) else text
            text = text + (b"" if isinstance(text, bytes) else "") + (str(row).encode() if isinstance(text, bytes) else str(row))
        if table == "sung_word":
            text = "".join(text.split()) if isinstance(text, str) else bytes(text.replace(b" ", b""))
        raw = text if isinstance(text, bytes) else text.encode()
        base.execute(f"UPDATE {table} SET {column} = CAST(? AS TEXT) WHERE rowid = ?", (raw, row))
        put[table, column, row] = text
    for row, in list(base.execute("SELECT rowid FROM drill")):
        text = choose(row, "drill", "steps")
        if isinstance(text, str):
            base.execute("UPDATE drill SET steps = ? WHERE rowid = ?", (json.dumps([text, "Then rest."]), row))
            put["drill", "steps", row] = text
    base.commit()
    base.close()
    return put
