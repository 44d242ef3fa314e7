"""The script's page: drafted, worded, halts moved, put in another order, rehearsed."""

import subprocess
import time

from sound import RATE, write_noise
from window import wait_for

WORDS = "My own words, and no draft touches them."


def items(project, kind):
    return project.rows("SELECT id, at_s, text, own_words FROM script_item WHERE kind = ? ORDER BY at_s, id", kind)


def phrase_ends(project):
    return [end for (end,) in project.rows("SELECT end_s FROM mark WHERE kind = 'phrase' ORDER BY end_s")]


def add_stop(desk, project, until_edit):
    """At the playhead, with words; it is selected then."""
    known = {row[0] for row in items(project, "stop")}
    until_edit(project, "add stop", lambda: desk.keys("s"))
    added = [row for row in items(project, "stop") if row[0] not in known]
    assert len(added) == 1, added
    desk.type(WORDS)
    desk.keys("Escape")
    wait_for("the words", lambda: WORDS in [row[2] for row in items(project, "stop") if row[0] == added[0][0]])
    return added[0][0]


def write_script(desk, project, until_edit):
    desk.keys("Escape", "F9")

    def place(stop):
        return project.one("SELECT at_s FROM script_item WHERE id = ?", stop)

    stop = add_stop(desk, project, until_edit)
    assert project.one("SELECT own_words FROM script_item WHERE id = ?", stop) == 1
    put = place(stop)
    until_edit(project, "change stop", lambda: desk.keys("bracketright"))
    first = place(stop)
    assert first > put and any(abs(first - end) < 1e-6 for end in phrase_ends(project)), (put, first)
    desk.keys("ctrl+z")
    wait_for("undo of the move", lambda: place(stop) == put)
    desk.keys("ctrl+y")
    wait_for("redo of the move", lambda: place(stop) == first)

    # A second one at the playhead is dragged under it: to a phrase end that isn't before the first's.
    second = add_stop(desk, project, until_edit)
    began = place(second)

    def drag():
        for top in range(200, 480, 16):
            desk.drag_down(300, top, 740)
            if place(second) != began or place(stop) != first:
                return

    drag()
    wait_for("the dragged stop", lambda: place(second) != began)
    assert place(second) >= first and any(abs(place(second) - end) < 1e-6 for end in phrase_ends(project))

    # Words are kept when another part is selected before they were stored.
    desk.keys("e")
    desk.type(" More.")
    desk.click(300, 280)
    desk.click(300, 400)
    wait_for("the words left in a hurry", lambda: [row for row in items(project, "stop") if row[2].endswith(" More.")])
    desk.keys("ctrl+z")
    wait_for("undo of these words", lambda: {row[2] for row in items(project, "stop")} == {WORDS})

    until_edit(project, "draft the script", lambda: desk.keys("ctrl+d"))
    drafted = items(project, "opening") + items(project, "closing")
    assert len(drafted) == 2 and all(text and not own for _, _, text, own in drafted), drafted
    assert {row[2] for row in items(project, "stop") if row[0] in (stop, second)} == {WORDS}
    return stop


def length_of(wav):
    told = subprocess.run(["ffprobe", "-v", "error", "-show_entries", "stream=duration_ts", "-of", "csv=p=0", str(wav)],
                          capture_output=True, text=True, check=True).stdout
    return int(told) / RATE


def rehearse(desk, project, folder):
    """The opening and a stop recorded, the rest left; the times are kept, and taken back."""
    def rehearsed():
        return dict(project.rows("SELECT id, rehearsed_s FROM script_item WHERE rehearsed_s IS NOT NULL"))

    write_noise(desk.microphone)
    opening = items(project, "opening")[0][0]
    before = len(project.edits())
    desk.keys("ctrl+r")
    time.sleep(0.3)
    desk.keys("r")
    time.sleep(1.5)
    desk.keys("space")  # the music
    time.sleep(0.5)
    desk.keys("space")  # on to the first stop
    time.sleep(1.2)
    desk.keys("space", "Escape")
    time.sleep(0.3)
    assert len(project.edits()) == before and not rehearsed()
    desk.keys("k")
    wait_for("the rehearsed times", lambda: len(rehearsed()) == 2)
    assert project.edits()[before:] == ["keep the rehearsed times"], project.edits()[before:]
    times = rehearsed()
    assert opening in times and all(0.8 < t < 15 for t in times.values()), times
    takes = {id: folder / "song-voice" / f"talk-{id}.wav" for id in times}
    wait_for("the recorded talks", lambda: all(take.exists() for take in takes.values()))
    for id, take in takes.items():
        assert abs(length_of(take) - times[id]) < 1 / RATE, (length_of(take), times)
    wait_for("nothing else to be left", lambda: len(list((folder / "song-voice").iterdir())) == len(takes))
    desk.keys("ctrl+z")
    wait_for("undo of the times", lambda: not rehearsed())
    desk.keys("F5")
