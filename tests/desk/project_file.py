"""What a project file holds, read by SQLite and not by Luftpause."""

import sqlite3


class ProjectFile:
    def __init__(self, path):
        self.path = path

    def rows(self, query, *values):
        """Empty while the file isn't there yet or is being written."""
        if not self.path.exists():
            return []
        connection = sqlite3.connect(f"file:{self.path}?mode=ro", uri=True, timeout=5)
        try:
            return connection.execute(query, values).fetchall()
        except sqlite3.OperationalError:
            return []
        finally:
            connection.close()

    def one(self, query, *values):
        rows = self.rows(query, *values)
        return rows[0][0] if rows else None

    def edits(self):
        """Labels of the edits that aren't undone, oldest first."""
        return [label for (label,) in self.rows(
            "SELECT label FROM journal_entry WHERE undone = 0 ORDER BY id")]

    def commits(self):
        """SQLite's own count in the file's header: another number after each commit."""
        return int.from_bytes(self.path.read_bytes()[24:28], "big")

    def coachs(self):
        """Everything that the coach has decided, as rows to compare."""
        return (self.rows("SELECT * FROM piece"),
                self.rows("SELECT * FROM mark WHERE state <> 'proposed' ORDER BY id"),
                self.rows("SELECT * FROM moment WHERE state <> 'proposed' ORDER BY id"),
                self.rows("SELECT s.* FROM moment_shade s JOIN moment m ON m.id = s.moment"
                          " WHERE m.state <> 'proposed' ORDER BY s.id"))

    def everything(self):
        return self.coachs() + (self.rows("SELECT * FROM mark ORDER BY id"),
                                self.rows("SELECT id, undone, label FROM journal_entry ORDER BY id"))

    def sound(self):
        return self.one("PRAGMA integrity_check") == "ok"
