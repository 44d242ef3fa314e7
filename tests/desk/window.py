"""A screen of its own, and the window on it, driven by real key and mouse events."""

import ctypes
import os
import re
import shutil
import signal
import subprocess
import time

LIMIT = 20  # seconds that anything may take before the test fails


def needed_and_missing():
    return [name for name in ("Xvfb", "xdotool") if not shutil.which(name)]


def wait_for(what, condition, limit=LIMIT):
    """The condition's first true value."""
    end = time.monotonic() + limit
    while time.monotonic() < end:
        value = condition()
        if value:
            return value
        time.sleep(0.05)
    raise AssertionError(f"waited {limit} s in vain for: {what}")


def _die_with_us():
    ctypes.CDLL(None).prctl(1, signal.SIGKILL)  # PR_SET_PDEATHSIG: nothing is left when the test is killed


class Screen:
    """Xvfb on a free display number."""

    def __init__(self):
        reading, writing = os.pipe()
        self.server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(writing), "-screen", "0", "1280x800x24", "-nolisten", "tcp", "-noreset"],
            pass_fds=[writing], preexec_fn=_die_with_us,
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(writing)
        with os.fdopen(reading) as pipe:
            self.display = ":" + pipe.readline().strip()
        assert self.display != ":", "Xvfb gave no display"

    def close(self):
        self.server.kill()
        self.server.wait()


class Desk:
    """luftpause-desk, started anew with each `start`."""

    def __init__(self, program, screen, scratch):
        self.program = program
        self.process = None
        self.sound = scratch / "sound.raw"
        self.microphone = scratch / "microphone.raw"
        home = scratch / "home"
        home.mkdir()
        self.log = scratch / "log.txt"
        self.environment = {
            "PATH": os.environ["PATH"], "DISPLAY": screen.display, "HOME": str(home),
            "XDG_CONFIG_HOME": str(home / ".config"), "XDG_RUNTIME_DIR": str(home),
            "GDK_BACKEND": "x11", "GSETTINGS_BACKEND": "memory", "NO_AT_BRIDGE": "1", "LANG": "C.UTF-8",
            "SDL_AUDIODRIVER": "disk", "SDL_DISKAUDIOFILE": str(self.sound),
            "SDL_DISKAUDIOFILEIN": str(self.microphone)}
        for name in ("LD_LIBRARY_PATH", "ASAN_OPTIONS", "UBSAN_OPTIONS", "LSAN_OPTIONS", "TSAN_OPTIONS"):
            if name in os.environ:
                self.environment[name] = os.environ[name]

    def start(self, file, window):
        with self.log.open("ab") as log:
            self.process = subprocess.Popen([self.program, str(file)], env=self.environment,
                                            preexec_fn=_die_with_us, stdout=log, stderr=log)
        self.focus(window)

    def _xdotool(self, *arguments):
        done = subprocess.run(["xdotool", *arguments], env=self.environment, text=True,
                              capture_output=True, check=False)
        return done.stdout.strip() if done.returncode == 0 else None

    def alive(self):
        return self.process.poll() is None

    def windows(self, name):
        assert self.alive(), f"the program ended with {self.process.returncode}:\n{self.log.read_text()}"
        found = self._xdotool("search", "--onlyvisible", "--name", "^" + re.escape(name))
        return found.split() if found else []

    def focus(self, name):
        """Waits for a window whose name begins so, and gives it the keys, as a window manager would."""
        def focused():
            for window in self.windows(name):
                if self._xdotool("windowfocus", "--sync", window) is not None:
                    return window
            return None
        return wait_for(f"the window '{name}'", focused)

    def gone(self, name):
        wait_for(f"the window '{name}' to go", lambda: not self.windows(name))

    def keys(self, *keys):
        self._xdotool("key", "--delay", "40", *keys)

    def type(self, text):
        self._xdotool("type", "--delay", "25", text)

    def click(self, x, y):
        self._xdotool("mousemove", str(x), str(y), "click", "1")

    def drag(self, x1, x2, y):
        """Along a line, with steps on the way, as a hand does it."""
        steps = [str(x1 + (x2 - x1) * i // 6) for i in range(1, 7)]
        moves = [word for x in steps for word in ("mousemove", x, str(y), "sleep", "0.02")]
        self._xdotool("mousemove", str(x1), str(y), "mousedown", "1", *moves, "mouseup", "1")

    def drag_down(self, x, y1, y2):
        steps = [str(y1 + (y2 - y1) * i // 6) for i in range(1, 7)]
        moves = [word for y in steps for word in ("mousemove", str(x), y, "sleep", "0.02")]
        self._xdotool("mousemove", str(x), str(y1), "mousedown", "1", "sleep", "0.05", *moves, "mouseup", "1")

    def quit(self):
        self.keys("ctrl+q")
        wait_for("the program to quit", lambda: not self.alive())
        assert self.process.returncode == 0, f"it quit with {self.process.returncode}"

    def kill(self):
        self.process.kill()
        self.process.wait()

    def close(self):
        if self.process and self.alive():
            self.kill()
