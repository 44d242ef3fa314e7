"""Projects that are damaged, or none: shown as far as they can be read, and never written to."""

import shutil
import sqlite3
import time

from project_file import ProjectFile
from window import wait_for


def without_a_curve(desk, project, title, folder):
    """One curve is cut short: the marks are still shown, and no key changes anything."""
    file = folder / "damaged.luft"
    shutil.copy(project.path, file)
    connection = sqlite3.connect(file)
    with connection:
        connection.execute("UPDATE curve SET samples = x'00ff00' WHERE id = (SELECT min(id) FROM curve)")
    connection.close()
    before = file.read_bytes()
    desk.start(file, title)
    desk.keys("n", "k", "b", "m", "Delete", "ctrl+z")
    desk.quit()
    assert file.read_bytes() == before, "a damaged project was written to"
    assert ProjectFile(file).coachs() == project.coachs()


def not_a_project(desk, folder):
    """Something else under a project's name: the start page stays, and can be left as usual."""
    file = folder / "letter.luft"
    file.write_text("Dear Pella, the song goes well.\n", encoding="utf-8")
    desk.start(file, "Luftpause")
    desk.quit()
    assert file.read_text(encoding="utf-8").startswith("Dear Pella")


def lost_project(desk, project, title, folder):
    """The project is removed while it is open: no edit is swallowed, and what is open is saved as a copy."""
    file, copy = folder / "lost.luft", folder / "found.luft"
    shutil.copy(project.path, file)
    everything, edits = project.everything(), len(project.edits())
    desk.start(file, title)
    file.unlink()
    desk.keys("b")
    desk.keys("ctrl+shift+s")
    desk.focus("Save a copy")
    desk.keys("ctrl+a")
    desk.type(str(copy))
    desk.keys("Return")
    desk.gone("Save a copy")
    wait_for("the copy", copy.exists)
    saved = ProjectFile(copy)
    assert not file.exists() and saved.everything() == everything
    desk.focus(title)
    time.sleep(1)
    desk.keys("b")
    wait_for("an edit of the copy", lambda: len(saved.edits()) == edits + 1)
    desk.quit()


def moved_recording(desk, project, title, media):
    """The recording is gone: marks can still be set and taken back."""
    away = media.with_suffix(".away")
    media.rename(away)
    desk.start(project.path, title)
    count = len(project.edits())
    desk.keys("space", "b")
    wait_for("an edit without the recording", lambda: len(project.edits()) == count + 1)
    desk.keys("ctrl+z")
    wait_for("its undo", lambda: len(project.edits()) == count)
    desk.quit()
    away.rename(media)
