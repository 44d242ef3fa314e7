"""The window is closed while a recording is being listened to: it asks, since that would be lost."""

import subprocess

from project_file import ProjectFile
from window import wait_for


def while_listening(desk, media, folder, new):
    long = folder / "long.mp4"
    subprocess.run(["ffmpeg", "-loglevel", "error", "-stream_loop", "19", "-i", str(media), "-c", "copy", str(long)],
                   check=True)
    desk.start(long, new)
    desk.keys("ctrl+a")
    desk.type("Long")
    desk.keys("Return")
    desk.gone(new)
    desk.focus("Long")
    desk.keys("ctrl+q")
    desk.focus("Close")
    desk.keys("Return")  # keeps working, unless told otherwise
    desk.gone("Close")
    desk.focus("Long")
    desk.keys("ctrl+q")
    desk.focus("Close")
    desk.keys("Tab", "Return")
    wait_for("the program to quit", lambda: not desk.alive())
    assert desk.process.returncode == 0, f"it quit with {desk.process.returncode}"
    project = ProjectFile(long.with_suffix(".luft"))
    assert project.rows("SELECT * FROM performance") == [], "a recording that wasn't listened to was added"
    assert project.rows("PRAGMA integrity_check") == [("ok",)]
