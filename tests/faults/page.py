#!/usr/bin/env python3
"""The table of docs/reliability.md, from the rows that the fault tests leave (tab-separated, one a line):
    page.py write ROWS_FOLDER PAGE    puts the table between the page's two marks; a row that wasn't run now stays as it
                                      was, and so does one that was run at full length, unless something was lost now
    page.py check ROWS_FOLDER PAGE    every row of the page was run just now without a loss, and no other"""
import pathlib
import sys

GROUPS = {
    "kill": "Killed",
    "disk": "Disk and files",
    "two programs": "Two programs on one project",
    "rot": "Damaged project files",
    "hostile input": "Hostile input",
    "load": "Load",
    "stop": "Stopped",
    "sanitizers": "Sanitizers and static analysis",
    "release": "Release",
    "privacy": "Privacy",
}
BEGIN, END = "<!-- rows: written by tests/faults/run -->", "<!-- end of rows -->"


def rows_of(folder):
    rows = []
    for file in sorted(pathlib.Path(folder).glob("*.tsv")):
        for line in file.read_text().splitlines():
            group, fault, how, runs, losses, command = line.split("\t")
            if group not in GROUPS:
                sys.exit(f"{file.name}: no group '{group}'")
            rows.append((group, fault, how, int(runs), int(losses), command))
    return rows


def table(rows):
    lines = []
    for group, title in GROUPS.items():
        mine = [row for row in rows if row[0] == group]
        if not mine:
            continue
        lines += [f"### {title}", "", "| fault | how it is injected | runs | losses | command |", "|---|---|---:|---:|---|"]
        for _, *cells, command in mine:
            cells = [f"{cell:,}" if isinstance(cell, int) else cell for cell in cells] + [f"`{command}`"]
            lines.append("| " + " | ".join(cell.replace("|", r"\|") for cell in cells) + " |")
        lines.append("")
    return "\n".join(lines)


def on_page(page):
    text = page.read_text()
    group, rows = None, []
    for line in text[text.index(BEGIN) : text.index(END)].splitlines():
        if line.startswith("### "):
            group = next(name for name, title in GROUPS.items() if title == line[4:])
        elif line.startswith("| ") and not line.startswith("| fault |"):
            fault, how, runs, losses, command = [cell.replace(r"\|", "|") for cell in line[2:-2].split(" | ")]
            rows.append((group, fault, how, int(runs.replace(",", "")), int(losses.replace(",", "")), command.strip("`")))
    return rows


def at_full_length(command):
    """Whether a row's command is the long one: LUFT_LONG, or a script that ctest doesn't run, over all that it takes."""
    return "LUFT_LONG" in command or command.startswith("tests/") and not command.endswith((" --short", " core/base"))


def main():
    action, folder, page = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
    rows = rows_of(folder)
    if not rows:
        sys.exit("no rows: run the fault tests first (ctest -L faults)")
    bad = [f"{fault}: {losses} lost" for _, fault, _, _, losses, _ in rows if losses]
    bad += [f"{fault}: never injected" for _, fault, _, runs, _, _ in rows if not runs]
    if action == "write":
        full = {fault for _, fault, *_, command in on_page(page) if at_full_length(command)}
        rows = [row for row in rows if row[1] not in full or at_full_length(row[5]) or row[4]]
        now = {fault for _, fault, *_ in rows}
        rows = sorted(rows + [row for row in on_page(page) if row[1] not in now], key=lambda row: row[1])
        text = page.read_text()
        before, after = text[: text.index(BEGIN)], text[text.index(END) :]
        page.write_text(f"{before}{BEGIN}\n\n{table(rows)}\n{after}")
    else:
        run = {fault for _, fault, *_ in rows}
        promised = {fault for _, fault, *_ in on_page(page)}
        bad += [f"promised by the page, not run: {fault}" for fault in sorted(promised - run)]
        bad += [f"run, missing on the page: {fault}" for fault in sorted(run - promised)]
    if bad:
        sys.exit("\n".join(bad))


main()
