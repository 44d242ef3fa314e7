"""desk_opening.py PROGRAM RECORDING FOLDER: the window's first minutes, traced, with the user's own settings all at their
defaults. Meant to run where there is no network (unshare -rn). Leaves FOLDER/trace and FOLDER/work."""

import os
import pathlib
import shutil
import sys
import time

sys.dont_write_bytecode = True
sys.path.insert(0, str(pathlib.Path(__file__).parent.parent / "desk"))
import traced as tracing  # noqa: E402
from walk import bring_in  # noqa: E402
from window import Desk, Screen, wait_for  # noqa: E402

TITLE, PRINT = "Quiet Song", "Print the sheet to PDF"


def walk(desk, recording, work):
    project = bring_in(desk, recording, TITLE)
    desk.keys("space")
    time.sleep(1)
    desk.keys("space", "n", "k")
    wait_for("a decision", lambda: any(e.startswith("keep") for e in project.edits()))
    desk.keys("ctrl+p")
    desk.focus(PRINT)
    desk.keys("Return")
    wait_for("the printed sheet", (work / "song-sheet.pdf").exists)
    desk.gone(PRINT)
    desk.focus(TITLE)
    for page in ("F6", "F7", "F8", "F5"):
        desk.keys(page)
        time.sleep(0.3)
    desk.quit()


def main():
    program, recording, folder = sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])
    work = folder / "work"
    work.mkdir()
    song = work / ("song" + recording.suffix)
    shutil.copy(recording, song)
    wrapper = folder / "traced"
    wrapper.write_text("#!/bin/sh\nexec " + " ".join(tracing.command(folder / "trace")) + f' "{program}" "$@"\n')
    wrapper.chmod(0o755)
    screen = Screen()
    desk = Desk(str(wrapper), screen, folder)
    for name in ("XDG_CONFIG_HOME", "GSETTINGS_BACKEND", "NO_AT_BRIDGE"):
        desk.environment.pop(name)
    run = folder / "run"
    run.mkdir(mode=0o700)
    desk.environment["XDG_RUNTIME_DIR"] = str(run)
    try:
        walk(desk, song, work)
    finally:
        desk.close()
        screen.close()
    # Anything the copy itself did isn't the program's.
    assert os.path.exists(folder / "trace")


main()
