"""The desk as a coach uses it, from the first recording to a crash that loses nothing.

    walk.py PROGRAM MEDIA_FOLDER

Every step is a real key or mouse event to a started program; what came of it is read from the project file,
the printed page or the captured sound. Returns 77 when there is no Xvfb or xdotool."""

import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

sys.dont_write_bytecode = True
import broken  # noqa: E402
import closing  # noqa: E402
import script  # noqa: E402
import versions  # noqa: E402
from project_file import ProjectFile  # noqa: E402
from sound import LENGTH, PITCH, RATE, captured, pitch, stretches, write_tone  # noqa: E402
from window import Desk, Screen, needed_and_missing, wait_for  # noqa: E402

TITLE = "Proof Song"
REMARK = "Keep n and k: b w m 123, still only words"
NEW = "New from a recording"


def tell(step, began=time.monotonic()):
    print(f"{time.monotonic() - began:5.1f} s  {step}", flush=True)


def bring_in(desk, media, title):
    """A new project beside the recording, listened to."""
    desk.start(media, NEW)
    desk.keys("ctrl+a")
    desk.type(title)
    desk.keys("Return")
    desk.gone(NEW)
    desk.focus(title)
    project = ProjectFile(media.with_suffix(".luft"))
    wait_for("listening to end",
             lambda: any(e.startswith("propose moments") for e in project.edits()), 60)
    assert project.one("SELECT title FROM piece") == title
    return project


def until_edit(project, label, act, tries=12):
    """Acts until the newest edit is of that name: the window may still be busy with what came before."""
    before = len(project.edits())
    for _ in range(tries):
        act()
        for _ in range(15):
            edits = project.edits()
            if len(edits) > before:
                assert edits[-1].startswith(label), f"'{edits[-1]}' instead of '{label}'"
                assert len(edits) == before + 1, edits
                return
            time.sleep(0.05)
    raise AssertionError(f"no edit '{label}' came; edits: {project.edits()}")


def review(desk, project):
    notes = project.one("SELECT count(*) FROM mark WHERE kind = 'note'")
    assert notes >= 5, f"only {notes} notes in 20 s of singing"
    assert project.one("SELECT count(*) FROM mark WHERE state <> 'proposed'") == 0
    until_edit(project, "keep", lambda: desk.keys("n", "k"))
    until_edit(project, "drop", lambda: desk.keys("Delete"))  # the next one comes by itself
    until_edit(project, "keep", lambda: desk.keys("k"))
    decided = sum(project.one(f"SELECT count(*) FROM {table} WHERE state = '{state}' AND origin = 'detected'")
                  for table in ("mark", "moment") for state in ("kept", "dropped"))
    assert decided == 3, f"{decided} decided instead of 3"


def make_moment(desk, project):
    """Drags where there is room: what else a drag moves is taken back."""
    count = len(project.edits())
    for y in range(200, 700, 17):
        desk.drag(330, 480, y)
        time.sleep(0.3)
        edits = project.edits()
        if len(edits) == count:
            continue
        if edits[-1].startswith("add moment"):
            moment, start, end, state = project.rows(
                "SELECT id, start_s, end_s, state FROM moment WHERE origin = 'coach'")[0]
            assert 0.2 < end - start < 8 and state == "kept", (start, end, state)
            return moment
        desk.keys("ctrl+z")
        wait_for("undo of a stray drag", lambda: len(project.edits()) == count)
    raise AssertionError("no drag made a moment")


def tag(desk, project, moment):
    def shades():
        return project.rows("SELECT facet, shade FROM moment_shade WHERE moment = ?", moment)

    def remark():
        return project.one("SELECT remark FROM moment WHERE id = ?", moment)

    before = len(project.edits())
    desk.keys("t")
    desk.type("ringing")
    desk.keys("Return")
    wait_for("the shade", lambda: shades() == [("resonance", "ringing")])
    desk.keys("e")
    desk.type(REMARK)
    desk.keys("Escape")
    wait_for("the remark", lambda: remark() == REMARK)
    assert len(project.edits()) == before + 2, f"writing did more: {project.edits()}"
    desk.keys("2")
    wait_for("the verdict", lambda: project.one("SELECT verdict FROM moment WHERE id = ?", moment) == "watch")

    desk.keys("ctrl+z", "ctrl+z")
    wait_for("undo of the remark", lambda: remark() == "")
    assert shades() == [("resonance", "ringing")]
    desk.keys("ctrl+z")
    wait_for("undo of the shade", lambda: shades() == [])
    desk.keys("ctrl+y", "ctrl+y", "ctrl+y")
    wait_for("redo", lambda: remark() == REMARK and shades() == [("resonance", "ringing")]
             and len(project.edits()) == before + 3)


def print_sheet(desk, folder):
    desk.keys("ctrl+p")
    desk.focus("Print the sheet to PDF")
    desk.keys("Return")
    page = folder / "song-sheet.pdf"
    wait_for("the PDF", page.exists)
    desk.gone("Print the sheet to PDF")
    words = subprocess.run(["pdftotext", str(page), "-"], capture_output=True, text=True, check=True).stdout
    assert TITLE in words and "Resonance: ringing" in words, words


def listen_again(desk):
    desk.keys("alt+f")
    time.sleep(0.3)  # the menu takes its time to open
    desk.keys("l")


def crash(desk, project):
    """Killed while it plays and right after an edit, then while it listens again."""
    desk.focus(TITLE)
    desk.keys("Escape", "space")
    until_edit(project, "add breath", lambda: desk.keys("b"))
    before = project.everything()
    desk.kill()
    assert project.sound() and project.everything() == before

    desk.start(project.path, TITLE)
    breaths = project.one("SELECT count(*) FROM mark WHERE origin = 'coach' AND kind = 'breath'")
    assert breaths == 1
    edits = len(project.edits())
    desk.keys("ctrl+z")
    wait_for("undo after the crash", lambda: len(project.edits()) == edits - 1)
    assert project.one("SELECT count(*) FROM mark WHERE origin = 'coach' AND kind = 'breath'") == 0
    desk.keys("ctrl+y")
    wait_for("redo after the crash", lambda: project.everything() == before)

    coachs = project.coachs()
    listen_again(desk)
    time.sleep(0.4)
    desk.kill()
    assert project.sound() and project.coachs() == coachs

    # The same without a crash: what the coach has decided outlives it.
    desk.start(project.path, TITLE)
    before = project.commits()
    listen_again(desk)
    wait_for("listening again", lambda: project.commits() != before)
    while project.commits() != before:  # it is stored in several goes; before the last the window asks
        before = project.commits()
        time.sleep(2)
    desk.quit()
    assert project.sound() and project.coachs() == coachs


def one_hearing(desk, seconds):
    """Length of the tone, time from one to the next, and pitch, of what is played from the moment's start."""
    since = desk.sound.stat().st_size if desk.sound.exists() else 0
    desk.keys("Return")
    time.sleep(seconds)
    desk.keys("space")
    time.sleep(0.3)
    samples = captured(desk.sound, since)
    rounds = stretches(samples)
    assert len(rounds) >= 2, f"{len(rounds)} rounds of the loop heard in {seconds:.1f} s"
    first, last = rounds[0]
    return ((last - first) / RATE, (rounds[1][0] - first) / RATE, pitch(samples[(first + last) // 2:]))


def hear(desk, speed, round_length, tries=3):
    """A busy machine can leave the sound device waiting, which stretches a silence: then once more."""
    for left in reversed(range(tries)):
        length, period, hertz = one_hearing(desk, 2.3 * round_length / speed)
        tell(f"at {speed:.0%}: tone of {length:.2f} s every {period:.2f} s, {hertz:.1f} Hz")
        off = max(abs(length * speed - LENGTH), abs(period * speed - round_length))
        if off < 0.1 and abs(hertz / PITCH - 1) < 0.006:  # 10 cents
            return
        assert left > 0, f"should be {LENGTH / speed} s every {round_length / speed} s at {PITCH} Hz"


def loop(desk, folder):
    """A tone of known pitch round a loop: at full speed, then at half: twice as long and no lower."""
    tone = folder / "tone.wav"
    write_tone(tone)
    project = bring_in(desk, tone, "Tone")
    until_edit(project, "add moment", lambda: desk.keys("m"))
    start, end = project.rows("SELECT start_s, end_s FROM moment WHERE origin = 'coach'")[0]
    desk.keys("l")
    hear(desk, 1.0, end - start)
    desk.keys("minus", "minus", "minus", "minus")  # 90, 75, 60, 50 %
    hear(desk, 0.5, end - start)
    desk.quit()


def walk(program, media_folder, folder):
    screen = Screen()
    desk = Desk(program, screen, folder)
    try:
        media = folder / "song.mp4"
        subprocess.run(["ffmpeg", "-loglevel", "error", "-t", "20", "-i",
                        str(media_folder / "over-water-vasslow.mp4"), "-c", "copy", str(media)], check=True)
        project = bring_in(desk, media, TITLE)
        tell("listened to a recording")
        review(desk, project)
        tell("reviewed")
        moment = make_moment(desk, project)
        tell("made a moment by dragging")
        tag(desk, project, moment)
        tell("tagged it, wrote, took back, made again")
        print_sheet(desk, folder)
        tell("printed")
        script.write_script(desk, project, until_edit)
        tell("wrote a script")
        script.rehearse(desk, project, folder)
        tell("rehearsed it")
        crash(desk, project)
        tell("killed twice, lost nothing, quit")
        broken.without_a_curve(desk, project, TITLE, folder)
        broken.lost_project(desk, project, TITLE, folder)
        broken.not_a_project(desk, folder)
        broken.moved_recording(desk, project, TITLE, media)
        tell("opened what is broken")
        loop(desk, folder)
        tell("looped")
        closing.while_listening(desk, media, folder, NEW)
        tell("closed while it listened")
        versions.walk(desk, program, media_folder, folder, until_edit, tell)
    finally:
        desk.close()
        screen.close()


def main():
    missing = needed_and_missing()
    if missing:
        print("Skipped: " + " and ".join(missing) + " not installed (tests/packages).")
        return 77
    folder = pathlib.Path(tempfile.mkdtemp(prefix="luftpause-desk-"))
    try:
        walk(pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve(), folder)
    finally:
        shutil.rmtree(folder, ignore_errors=True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
