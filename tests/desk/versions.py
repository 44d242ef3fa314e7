"""The page of two performances: compared in the background, a difference heard, a moment made, a pin set."""

import array
import subprocess
import time

from project_file import ProjectFile
from sound import BLOCK, RATE, captured
from window import wait_for

TITLE = "Over Water"


def make_project(program, media_folder, folder):
    """The first lines of the sample's two recordings, listened to by the command line, which stands beside the
    window's program."""
    file = folder / "two.luft"
    tool = program.with_name("luftpause")
    subprocess.run([tool, "new", file, "--title", TITLE], check=True, stdout=subprocess.DEVNULL)
    for label, name in (("vasslow", "over-water-vasslow.mp4"), ("marnik", "over-water-marnik.mkv")):
        subprocess.run(["ffmpeg", "-v", "error", "-t", "26", "-i", media_folder / name, "-c", "copy", folder / name],
                       check=True)
        subprocess.run([tool, "add", file, folder / name, "--label", label], check=True, stdout=subprocess.DEVNULL,
                       stderr=subprocess.DEVNULL)
    return ProjectFile(file)


def loudness(samples):
    """Mean size of the samples, every 10 ms."""
    return [sum(map(abs, samples[i:i + BLOCK])) / BLOCK for i in range(0, len(samples) - BLOCK, BLOCK)]


def of_recording(media, start, seconds):
    raw = subprocess.run(["ffmpeg", "-v", "error", "-ss", str(start), "-t", str(seconds), "-i", str(media), "-ac", "1",
                          "-ar", str(RATE), "-f", "f32le", "-"], capture_output=True, check=True).stdout
    samples = array.array("f")
    samples.frombytes(raw)
    return loudness(samples)


def likeness(wanted, heard):
    """Highest correlation of a loudness curve with any stretch of another, and where it lies (10 ms)."""
    n = len(wanted)
    middle = sum(wanted) / n
    mine = [w - middle for w in wanted]
    size = sum(m * m for m in mine) ** 0.5
    best, at = 0.0, 0
    for shift in range(len(heard) - n):
        part = heard[shift:shift + n]
        mean = sum(part) / n
        away = [p - mean for p in part]
        other = sum(a * a for a in away) ** 0.5
        if other > 0 and (value := sum(a * b for a, b in zip(mine, away)) / size / other) > best:
            best, at = value, shift
    return best, at


def spans(project, moment):
    """The moment's own span and the one beside it."""
    own = project.rows("SELECT start_s, end_s, performance FROM moment WHERE id = ?", moment)
    beside = project.rows("SELECT start_s, end_s, performance FROM moment_beside WHERE moment = ?", moment)
    return own[0] if own else None, beside[0] if beside else None


def make_moment(desk, project, until_edit):
    """Of the first difference that is at a place."""
    known = {row[0] for row in project.rows("SELECT id FROM moment")}
    labels = dict(project.rows("SELECT id, label FROM performance"))
    until_edit(project, "add moment", lambda: desk.keys("m"))
    moment, evidence = [row for row in project.rows("SELECT id, evidence FROM moment") if row[0] not in known][0]
    own, beside = spans(project, moment)
    assert labels[own[2]] == "marnik" and labels[beside[2]] == "vasslow", (own, beside)
    assert "marnik" in evidence and "vasslow" in evidence, evidence
    desk.keys("ctrl+z")
    wait_for("undo of the moment", lambda: not project.rows("SELECT id FROM moment WHERE id = ?", moment)
             and not project.rows("SELECT moment FROM moment_beside WHERE moment = ?", moment))
    desk.keys("ctrl+y")
    wait_for("redo of the moment", lambda: spans(project, moment) == (own, beside))
    return moment


def hear(desk, media, span, key, before=0.0, least=0.9):
    """What is heard after a key, and what sounds before it, is that performance's own span. The sound device has
    been opened for it, which begins the file anew."""
    start, end = span[:2]
    wanted = of_recording(media, start, end - start)
    began = time.monotonic()
    for left in reversed(range(3)):
        desk.keys(key)
        time.sleep(before + end - start + 1.2)
        until = int(RATE * (time.monotonic() - began + 0.5))
        best, _ = likeness(wanted, loudness(captured(desk.sound)[:until]))
        if best > least:
            return best
        assert left > 0, f"{best:.2f} alike after {key}"


def pin(desk, project, until_edit, upper=(600, 240), lower=(600, 400)):
    desk.click(*upper)
    desk.click(*lower)
    until_edit(project, "set the pins", lambda: desk.keys("x"))
    pins = project.rows("SELECT first_s, second_s FROM pin")
    assert len(pins) == 1 and 0 < pins[0][0] < 20 and 0 < pins[0][1] < 20, pins
    desk.keys("ctrl+z")
    wait_for("undo of the pin", lambda: not project.rows("SELECT 1 FROM pin"))
    desk.keys("ctrl+y")
    wait_for("redo of the pin", lambda: project.rows("SELECT 1 FROM pin"))


def remove_pin(desk, project, until_edit, listed=(920, 692), button=(1190, 735)):
    """By its button, which can be pressed once the pin is selected."""
    time.sleep(2)  # what is compared anew after the pin would wake the button too

    def act():
        desk.click(*listed)
        time.sleep(0.2)
        desk.click(*button)
    until_edit(project, "set the pins", act)
    assert not project.rows("SELECT 1 FROM pin")


def leave(desk, media_folder, upper, lower, project, until_edit, tell):
    """Whatever the page has opened in the player, the sheet plays its own performance afterwards. Where the
    player was left with the other two, 0.44 was the best likeness."""
    own = media_folder / "over-water-marnik.mkv"
    until_edit(project, "add moment", lambda: desk.keys("m"))  # it is selected on the sheet
    desk.keys("y")
    time.sleep(1)
    desk.keys("g", "F5")
    both = hear(desk, own, lower, "Return", least=0.7)
    desk.keys("F4", "g")
    one = hear(desk, media_folder / "over-water-vasslow.mp4", upper, "u")
    swap(desk)
    desk.keys("F5")
    swapped = hear(desk, own, lower, "Return", least=0.7)
    desk.keys("F4")
    swap(desk)
    tell(f"heard the sheet's own after both, and after the other one: {both:.2f}, {one:.2f}, {swapped:.2f} alike")


def swap(desk):
    desk.keys("alt+s")
    time.sleep(0.3)  # the menu takes its time to open
    desk.keys("w")
    time.sleep(0.3)


def walk(desk, program, media_folder, folder, until_edit, tell):
    project = make_project(program, media_folder, folder)
    desk.start(project.path, TITLE)
    desk.keys("F4")

    def choose():
        """Keys do nothing until the two have been compared: then the fifth difference has a place."""
        desk.keys("Escape", "Down", "Down", "Down", "Down", "Down", "m")
        time.sleep(0.3)
        return [e for e in project.edits() if e.startswith("add moment")]

    wait_for("the comparison", choose)
    desk.keys("ctrl+z")
    wait_for("undo", lambda: not any(e.startswith("add moment") for e in project.edits()))
    moment = make_moment(desk, project, until_edit)
    tell("made a moment of a difference, took it back, made it again")
    own, beside = spans(project, moment)
    upper = hear(desk, media_folder / "over-water-vasslow.mp4", beside, "u")
    lower = hear(desk, media_folder / "over-water-marnik.mkv", own, "o", before=beside[1] - beside[0] + 0.8)
    left = hear(desk, media_folder / "over-water-vasslow.mp4", beside, "y")
    tell(f"heard the difference in one, in both after each other, and at once: {upper:.2f}, {lower:.2f}, {left:.2f} alike")
    leave(desk, media_folder, beside, own, project, until_edit, tell)
    pin(desk, project, until_edit)
    remove_pin(desk, project, until_edit)
    tell("pinned, took it back, did it again, removed it by its button")
    desk.quit()
