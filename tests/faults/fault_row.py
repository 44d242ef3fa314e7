"""A row of docs/reliability.md for tests in Python; row.h is the same for C++."""

import os
import sys

LONG = "LUFT_LONG" in os.environ
_losses = 0


class Row:
    """with Row(group, fault, how, command) as row: what goes wrong, how it is injected, how to run it alone.
    An exception counts as a loss."""

    def __init__(self, group, fault, how, command):
        self.cells = [group, fault, how]
        self.command = ("LUFT_LONG=1 " if LONG else "") + command
        self.runs = self.losses = 0

    def run(self):
        self.runs += 1

    def must(self, holds, what):
        """Counts what doesn't hold as lost, and says what."""
        if not holds:
            self.lost(what)

    def lost(self, what):
        global _losses
        _losses += 1
        self.losses += 1
        print(f"LOST: {self.cells[1]}: {what}", flush=True)

    def __enter__(self):
        return self

    def __exit__(self, kind, error, trace):
        if error is not None:
            self.lost(f"{kind.__name__}: {error}")
        file = os.environ.get("LUFT_FAULT_ROWS")
        if file:
            os.makedirs(os.path.dirname(file), exist_ok=True)
            with open(file, "a", encoding="utf-8") as rows:
                rows.write("\t".join([*self.cells, str(self.runs), str(self.losses), self.command]) + "\n")
        print(f"{self.runs} runs, {self.losses} losses: {self.cells[1]}", flush=True)
        return isinstance(error, Exception)


def end():
    """Ends the program as its rows went."""
    sys.exit(1 if _losses else 0)
