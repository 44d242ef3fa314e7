"""The script's page: drafted, worded, halts moved, mended, put in another order."""

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
    until_edit(project, "draft the script", lambda: desk.keys("ctrl+d"))
    drafted = items(project, "opening") + items(project, "closing")
    assert len(drafted) == 2 and all(text and not own for _, _, text, own in drafted), drafted

    def place(stop):
        return project.one("SELECT at_s FROM script_item WHERE id = ?", stop)

    stop = add_stop(desk, project, until_edit)
    assert project.one("SELECT own_words FROM script_item WHERE id = ?", stop) == 1
    until_edit(project, "change stop", lambda: desk.keys("bracketright"))
    first = place(stop)
    ends = phrase_ends(project)
    assert any(abs(first - end) < 1e-6 for end in ends), f"{first} is none of {ends}"
    until_edit(project, "change stop", lambda: desk.keys("bracketright"))
    assert place(stop) > first
    desk.keys("ctrl+z")
    wait_for("undo of the move", lambda: place(stop) == first)

    # A second one at the beginning of the recording is dragged behind it: to a later phrase end.
    second = add_stop(desk, project, until_edit)
    began = place(second)
    def drag():
        for top in range(200, 480, 16):
            desk.drag_down(300, top, 740)
            if place(second) != began or place(stop) != first:
                return
    drag()
    moved = second if place(second) != began else stop
    wait_for("the dragged stop", lambda: (place(second), place(stop)) != (began, first))
    assert any(abs(place(moved) - end) < 1e-6 for end in phrase_ends(project)), place(moved)

    until_edit(project, "draft the script", lambda: desk.keys("ctrl+d"))
    assert {row[2] for row in items(project, "stop") if row[0] in (stop, second)} == {WORDS}
    return stop
