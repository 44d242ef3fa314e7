"""What a coach does on the command line, from a new project to every file of it; fewer seconds of singing than the sample has."""

import json
import os
import pathlib
import shutil
import subprocess

SECONDS = 9


def recordings(media, folder):
    """The beginnings of the sample's two performances, `folder`/A.mp4 and B.mkv."""
    files = {"A": ("over-water-vasslow.mp4", "A.mp4"), "B": ("over-water-marnik.mkv", "B.mkv")}
    for whole, part in files.values():
        subprocess.run(["ffmpeg", "-v", "error", "-t", str(SECONDS), "-i", str(pathlib.Path(media) / whole), "-c", "copy",
                        "-map_metadata", "-1", "-fflags", "+bitexact", str(folder / part)], check=True)
    return {label: folder / part for label, (_, part) in files.items()}


class Job:
    """In a folder of its own, with an empty home: calls() one after the other, each with `before` put before it."""

    def __init__(self, program, recordings, folder, before=lambda number: []):
        self.program, self.before, self.number = str(program), before, 0
        self.folder = folder / "project"
        self.folder.mkdir(parents=True)
        self.home = folder / "home"
        self.home.mkdir()
        self.said = []
        for file in recordings.values():
            shutil.copy(file, self.folder)

    def luftpause(self, *arguments):
        self.number += 1
        done = subprocess.run([*self.before(self.number), self.program, *arguments], cwd=self.folder, text=True,
                              capture_output=True, check=False,
                              env={"PATH": os.environ["PATH"], "HOME": str(self.home), "LANG": "C.UTF-8"})
        if done.returncode:
            raise AssertionError(f"luftpause {' '.join(arguments)}: {done.returncode}: {done.stderr}")
        self.said.append(done.stdout)
        return done.stdout

    def run(self):
        do = self.luftpause
        do("new", "song.luft", "--title", "Quiet Song")
        for label, file in (("A", "A.mp4"), ("B", "B.mkv")):
            do("add", "song.luft", file, "--label", label, "--performer", "N. N.")
            found = json.loads(do("moment", "song.luft", "list", "--performance", label, "--json"))
            moments = found if isinstance(found, list) else found["moments"]
            do("moment", "song.luft", "keep", *[str(m["id"]) for m in moments[:2]])
            do("script", "song.luft", "draft", "--performance", label)
        do("listen", "A.mp4", "--out", "heard.json")
        do("compare", "song.luft", "A", "B")
        do("guide", "song.luft", "--performance", "A", "--out", "guide.mp4")
        do("export", "song.luft", "--all", "out")
        do("piece", "song.luft", "--title", "Quieter Song")
        do("undo", "song.luft")
        do("redo", "song.luft")
        do("vocabulary", "song.luft", "add-facet", "vibrancy")
        do("beside", "song.luft", "--as", "html", "--out", "beside.html")
        do("compare", "song.luft", "A", "B", "--in-step", "both.wav")
        do("performance", "song.luft", "relink", "A", "A.mp4")
        do("check", "song.luft", "--rescue", "saved.luft")
        do("check", "song.luft")
        return self

    def files(self):
        """Everything written, but the project itself, which holds times of edits."""
        return {str(f.relative_to(self.folder)): f.read_bytes() for f in sorted(self.folder.rglob("*"))
                if f.is_file() and f.suffix != ".luft"}
