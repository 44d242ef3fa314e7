"""Measures what a coach waits for with projects and recordings far too large: measure.py BIN PAGE [--quick].

Processor time (user and system, of all threads) and peak memory of each run, as the system counts them; so that it tells
the same whatever else the machine does. Only the window on a screen is measured by the clock.
The limits are our judgement of what a coach accepts, no source.
"""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).parents[2] / "desk"))
from window import Screen  # noqa: E402

HOURS = 8
# Verb or format: the most seconds of processor time.
VERBS = {"marks": 5, "moment list": 5, "profile": 5, "cues": 5, "check": 30, "mark keep 1": 1, "undo": 1}
TEXTS = ["profile-html", "profile-json", "cues-html", "cues-csv", "captions", "edl", "otio", "teleprompter",
         "description", "handout", "marks-csv", "marks-json"]
LONG_TEXTS = ["analysis", "sheet-pdf"]
MOST_MB = 1000


def run(command, out=os.devnull):
    """Seconds of processor time and peak MB of a program, which must succeed."""
    with open(out, "w") as sink:
        # From a small process, since a child's peak begins with what it was forked from.
        pid = subprocess.Popen(command, stdout=sink, stderr=subprocess.PIPE)
        said = pid.stderr.read()
        _, status, used = os.wait4(pid.pid, 0)
    if status != 0:
        sys.exit(f"{' '.join(command)}: {said.decode(errors='replace')}")
    return used.ru_utime + used.ru_stime, used.ru_maxrss * 1024 / 1e6


def row(what, seconds, limit, memory, most=MOST_MB):
    missed = " **missed**" if seconds > limit or memory > most else ""
    line = f"| {what} | {seconds:.2f} s | {limit:g} s | {memory:.0f} MB | {most:g} MB |{missed}"
    print(line, flush=True)
    return line


def window(bin, project):
    lines = ["| work | processor time | most | |", "|---|---|---|---|"]
    said = subprocess.run([f"{bin}/luft-bench-load", "window", project], capture_output=True, text=True, check=True).stdout
    for text in said.splitlines():
        if text.startswith("#"):
            continue
        what, cost, limit = text.split("\t")
        missed = "**missed**" if float(cost) > float(limit) else ""
        lines.append(f"| {what} | {cost} ms | {limit} ms | {missed} |")
        print(lines[-1], flush=True)
    return lines


def on_screen(bin, screen, project, home):
    """The real window: seconds to its first picture, and to paint a frame while it scrolls. By the clock."""
    environment = {**os.environ, "DISPLAY": screen.display, "HOME": home, "XDG_CONFIG_HOME": home, "GDK_BACKEND": "x11",
                   "GSETTINGS_BACKEND": "memory", "NO_AT_BRIDGE": "1", "SDL_AUDIODRIVER": "dummy"}
    pid = subprocess.Popen([f"{bin}/luftpause-desk", "--measure", "300", project], env=environment, stdout=subprocess.PIPE,
                           stderr=subprocess.DEVNULL, text=True)
    said = pid.stdout.read()
    _, status, used = os.wait4(pid.pid, 0)
    opened = re.search(r"opened to first paint: ([\d.]+) s", said)
    frame = re.search(r"scrolling: median ([\d.]+) ms", said)
    if status != 0 or not opened or not frame:
        sys.exit(f"{project}: the window said: {said}")
    rows = (("the window opened to its first picture, by the clock", float(opened[1]) * 1000, 2000),
            ("a frame painted while it scrolls, median, by the clock", float(frame[1]), 8))
    lines = [f"| {what} | {cost:.2f} ms | {limit} ms | {'**missed**' if cost > limit else ''} |" for what, cost, limit in rows]
    memory = used.ru_maxrss * 1024 / 1e6
    lines.append(f"| its peak memory | {memory:.0f} MB | {MOST_MB} MB | {'**missed**' if memory > MOST_MB else ''} |")
    print("\n".join(lines), flush=True)
    return lines


def command_line(bin, project, label, more=()):
    lines = ["| work | processor time | most | peak memory | most | |", "|---|---|---|---|---|---|"]
    program = f"{bin}/luftpause"
    for verb, limit in [*VERBS.items(), *more]:
        words = verb.split()
        command = [program, words[0], project] + words[1:]
        if words[0] in ("marks", "moment", "profile", "cues"):
            command += ["--performance", label]
        if words[0] == "check":
            command = [program, "check", project]
        lines.append(row(f"`{verb}`", *(lambda r: (r[0], limit, r[1]))(run(command))))
    with tempfile.TemporaryDirectory() as folder:
        for form in TEXTS + LONG_TEXTS:
            seconds, memory = run([program, "export", project, "--performance", label, "--as", form, "--out", f"{folder}/x"])
            lines.append(row(f"`export --as {form}`", seconds, 5 if form in TEXTS else 60, memory))
    return lines


def recording(bin, folder, screen):
    """Sung scenes, eight hours of them."""
    program = f"{bin}/luftpause"
    subprocess.run([f"{bin}/luft-bench-load", "sing", f"{folder}/round.wav", "600"], check=True)
    subprocess.run(["ffmpeg", "-nostdin", "-loglevel", "error", "-stream_loop", "-1", "-i", f"{folder}/round.wav", "-t",
                    str(HOURS * 3600), "-sample_fmt", "s16", "-c:a", "flac", "-compression_level", "1",
                    f"{folder}/long.flac"], check=True)
    lines = ["| work | processor time | most | peak memory | most | |", "|---|---|---|---|---|---|"]
    run([program, "new", f"{folder}/day.luft", "--title", "A Day"])
    seconds, memory = run([program, "add", f"{folder}/day.luft", f"{folder}/long.flac"])
    lines.append(row(f"`add`, which listens to it: {HOURS * 3600 / seconds:.0f} x real time", seconds, HOURS * 3600 / 25,
                     memory, 400 * HOURS))
    lines.append(row("`profile` of it", *(lambda r: (r[0], 5, r[1]))(run([program, "profile", f"{folder}/day.luft"]))))
    lines.append(row("`export --as analysis` of it", *(lambda r: (r[0], 60, r[1]))(
        run([program, "export", f"{folder}/day.luft", "--as", "analysis", "--out", f"{folder}/day.json"]))))
    return lines + ["", "| work | | most | |", "|---|---|---|---|"] + on_screen(bin, screen, f"{folder}/day.luft", folder)


def main():
    bin, page, quick = sys.argv[1], sys.argv[2], "--quick" in sys.argv[3:]
    folder = tempfile.mkdtemp(prefix="luft-load-")
    screen = Screen()
    try:
        subprocess.run([f"{bin}/luft-bench-load", "make", folder], check=True)
        parts = [
            ("In the window, one performance of eight hours",
             window(bin, f"{folder}/long.luft") + on_screen(bin, screen, f"{folder}/long.luft", folder)),
            ("In the window, fifty performances of ten minutes",
             window(bin, f"{folder}/many.luft") + on_screen(bin, screen, f"{folder}/many.luft", folder)),
            ("On the command line, one performance of eight hours", command_line(bin, f"{folder}/long.luft", "take-1")),
            ("On the command line, fifty performances of ten minutes", command_line(bin, f"{folder}/many.luft", "take-25", [("beside", 10)])),
        ]
        if not quick:
            parts.append(("A recording of eight hours, sung by the test voice", recording(bin, folder, screen)))
        model = next((l.split(":")[1].strip() for l in open("/proc/cpuinfo") if l.startswith("model name")), "")
        text = ["# Load, measured", "",
                "Written by `tests/bench/load/run`. Two projects of 100,000 marks and 10,000 moments each:",
                "one performance of eight hours (an hour of real singing has 4,000 marks: this is three times as dense), and fifty of ten",
                f"minutes. Processor time of all threads on {model}, {os.cpu_count()} cores, but where a row says that it is by the clock: that is the",
                "real window, on a screen in memory (Xvfb). The other rows of the window are its work without a screen (session, layout,",
                "drawing), the median of several where it can be done again. What is the most that each may take is our judgement of what",
                "a coach accepts, no source.", ""]
        for heading, lines in parts:
            text += [f"## {heading}", ""] + lines + [""]
        if not quick:
            with open(page, "w") as out:
                out.write("\n".join(text))
    finally:
        screen.close()
        shutil.rmtree(folder)


main()
