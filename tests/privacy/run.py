"""run.py CLI DESK MEDIA_FOLDER: what the programs ask of the network and where they write, as the system sees it."""

import os
import pathlib
import socket
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor

sys.dont_write_bytecode = True
here = pathlib.Path(__file__).parent
sys.path[1:1] = [str(here.parent / "faults")]
import addresses  # noqa: E402
import job  # noqa: E402
import traced as tracing  # noqa: E402
from fault_row import LONG, Row, end  # noqa: E402

COMMAND = "ctest --test-dir build -R faults_privacy"
# A network namespace without any network, not even this machine's own. Root needs no user namespace for it, which a
# changed root wouldn't permit.
ALONE = ["unshare", "-n" if os.geteuid() == 0 else "-rn"]


def network_is_off():
    """True when nothing can be reached in there: shown by trying."""
    attempt = ("import socket,sys\ns=socket.socket()\n"
               "try:\n s.connect(('127.0.0.1',int(sys.argv[1])))\nexcept OSError: sys.exit(7)\n")
    server = socket.create_server(("127.0.0.1", 0))
    here_, there = (subprocess.run([*before, sys.executable, "-c", attempt, str(server.getsockname()[1])], check=False,
                                   capture_output=True, text=True) for before in ([], ALONE))
    if there.returncode not in (0, 7):
        sys.exit(f"a namespace without network isn't permitted here: {there.stderr.strip()}")
    return here_.returncode == 0 and there.returncode == 7


def trace_can_fail(folder):
    """A program that connects and writes elsewhere must be seen doing so."""
    elsewhere = folder / "elsewhere"
    elsewhere.mkdir()
    script = (f"import socket,os\nopen({str(elsewhere / 'a')!r},'w')\nos.rename({str(elsewhere / 'a')!r},{str(elsewhere / 'b')!r})\n"
              "s=socket.socket()\ns.connect_ex(('127.0.0.1',9))\n")
    subprocess.run([*tracing.command(folder / "control"), sys.executable, "-c", script], check=True, cwd=folder)
    seen = tracing.Trace(folder / "control", folder)
    return (any("AF_INET" in call for call in seen.sockets) and any("connect(" in call for call in seen.sockets)
            and {str(elsewhere / "a"), str(elsewhere / "b")} <= set(seen.outside("/nowhere")))


def same(name, one, other, folder):
    """Byte for byte, but a PDF's day of making: those are compared as printed."""
    if not name.endswith(".pdf"):
        return one == other
    printed = []
    for number, page in enumerate((one, other)):
        file = folder / f"{number}.pdf"
        file.write_bytes(page)
        printed.append(subprocess.run(["pdftotext", "-bbox", str(file), "-"], check=True, capture_output=True).stdout.split(b"<body>")[1])
        printed[-1] += subprocess.run(["pdftoppm", "-r", "30", "-gray", str(file)], check=True, capture_output=True).stdout
    return printed[0] == printed[1]


def command_line(program, media, scratch):
    off = network_is_off()
    recordings = job.recordings(media, scratch)
    traced = job.Job(program, recordings, scratch / "traced", lambda number: tracing.command(scratch / f"trace-{number}"))
    alone = job.Job(program, recordings, scratch / "alone", lambda number: ALONE)
    with ThreadPoolExecutor() as both:
        list(both.map(job.Job.run, (traced, alone)))

    with Row("privacy", "No network at hand", "the whole job of the command line in a namespace without network; every file and "
             "word compared with the same job where there is one", COMMAND) as row:
        row.must(off, "the namespace has a network, so nothing is shown")
        one, other = traced.files(), alone.files()
        row.must(len(one) > 50 and one.keys() == other.keys(), f"other files: {sorted(one.keys() ^ other.keys())}")
        row.must(traced.said == alone.said, "it said something else")
        for name in one:
            row.run()
            row.must(same(name, one[name], other.get(name, b""), scratch), f"{name} differs")

    calls = [(number, tracing.Trace(scratch / f"trace-{number}", traced.folder)) for number in range(1, traced.number + 1)]
    with Row("privacy", "A call to the network by the command line", "every call for a socket or a connection traced (strace), "
             "through the whole job", COMMAND) as row:
        row.must(trace_can_fail(scratch), "a program that connects and writes elsewhere wasn't seen")
        for number, seen in calls:
            row.run()
            row.must(seen.calls > 5, f"call {number} left no trace")
            row.must(not seen.sockets, f"call {number}: {seen.sockets[:3]}")

    with Row("privacy", "A file written anywhere else by the command line", "every file made, opened for writing, renamed or removed "
             "traced, through the whole job with an empty home", COMMAND) as row:
        changed = set()
        for number, seen in calls:
            row.run()
            changed |= seen.changed
            row.must(not seen.outside(traced.folder), f"call {number}: {seen.outside(traced.folder)}")
        row.must(str(traced.folder / "song.luft") in changed and str(traced.folder / "guide.mp4") in changed,
                 "the project's own files weren't seen, so nothing is shown")
        row.must(not list(traced.home.rglob("*")), f"in the home: {list(traced.home.rglob('*'))}")
    return recordings


def window(program, recording, folder):
    folder.mkdir()
    walked = subprocess.run([*ALONE, sys.executable, "-B", str(here / "desk_opening.py"), str(program), str(recording), str(folder)],
                            capture_output=True, text=True, check=False)
    with Row("privacy", "A call to the network by the window", "its first minutes (new, listening, playing, review, printing, all "
             "pages) traced in a namespace without network; only the screen and the desktop's own bus are asked for", COMMAND) as row:
        row.run()
        row.must(walked.returncode == 0, walked.stderr[-900:])
        seen = tracing.Trace(folder / "trace", folder)
        row.must(any("X11-unix" in call for call in seen.sockets), "the screen wasn't seen, so nothing is shown")
        # Local sockets lead to no other machine. Named all the same, so that a new one is noticed.
        known = ("/tmp/.X11-unix/", "/dbus/", "dbus-", "/run/bus", "/pulse/native", "/pipewire-", "/at-spi/")
        for call in sorted(set(seen.sockets)):
            if call.startswith("socket("):
                row.must(call.startswith("socket(AF_UNIX"), call)
            else:
                row.must("AF_UNIX" in call and any(place in call for place in known), call)

    with Row("privacy", "A file written anywhere else by the window", "every file made, opened for writing, renamed or removed traced, "
             "in the same walk with an empty home", COMMAND) as row:
        row.run()
        seen = tracing.Trace(folder / "trace", folder)
        home = folder / "home"
        # The last is the mailbox of the desktop's settings store, in memory: it says that a setting changed, never which.
        elsewhere = seen.outside(folder / "work", home / ".config", folder / "run/dconf", folder / "sound.raw")
        row.must(not elsewhere, f"{elsewhere}")
        row.must(str(home / ".config/luftpause-desk.conf") in seen.changed and str(folder / "work/song.luft") in seen.changed,
                 "the settings and the project weren't seen, so nothing is shown")
        left = [f for f in home.rglob("*") if f.is_file() and not f.is_relative_to(home / ".config")]
        row.must(not left, f"in the home: {left}")


def hostile(program, scratch):
    with Row("privacy", "A recording that names an address on the network", "as the path itself and inside playlists under true and "
             "false endings, with a server listening at that address", COMMAND) as row:
        listener = addresses.Listener()
        row.must(listener.can_be_reached(), "the server can't be reached, so nothing is shown")
        folder = scratch / "hostile"
        folder.mkdir()
        project = folder / "p.luft"
        subprocess.run([str(program), "new", str(project), "--title", "P"], check=True, capture_output=True)
        for name in addresses.media(folder, listener.port):
            for call in (["listen", name], ["add", str(project), name], ["listen", "file:" + name]) if LONG else (["listen", name],):
                done = subprocess.run([str(program), *call], capture_output=True, text=True, check=False, timeout=60, cwd=folder)
                row.run()
                row.must(listener.came() == 0, f"{call} connected")
                row.must(done.returncode == 1 and done.stderr.count("\n") == 1, f"{call}: {done.returncode} {done.stderr}")


def main():
    program, desk, media = (pathlib.Path(a).absolute() for a in sys.argv[1:4])
    why = tracing.permitted()
    if why:
        sys.exit(why)
    with tempfile.TemporaryDirectory(prefix="luft-privacy-") as name:
        scratch = pathlib.Path(name)
        recordings = command_line(program, media, scratch)
        hostile(program, scratch)
        window(desk, recordings["A"], scratch / "desk")
    end()


main()
