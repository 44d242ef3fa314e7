"""A program run under strace, and what it asked of the system: connections, and files that it made, changed or removed."""

import os
import re
import subprocess

CALLS = ("%network,open,openat,openat2,creat,rename,renameat,renameat2,mkdir,mkdirat,rmdir,unlink,unlinkat,link,linkat,"
         "symlink,symlinkat,truncate,chmod,fchmodat,mknod,mknodat,utimensat,setxattr")
LINE = re.compile(r"^\d+ +(\w+)\((.*)$")
PATH = re.compile(r'(?:(?:AT_FDCWD|\d+)<([^>]*)>, )?"((?:[^"\\]|\\.)*)"')
CHANGES = {"creat", "rename", "renameat", "renameat2", "mkdir", "mkdirat", "rmdir", "unlink", "unlinkat", "link", "linkat",
           "symlink", "symlinkat", "truncate", "chmod", "fchmodat", "mknod", "mknodat", "utimensat", "setxattr"}
DEVICES = ("/dev/null", "/dev/tty", "/dev/shm/")


def command(log):
    """What to put before a program's command line. -e signal=none: a stop by a signal isn't of interest."""
    return ["strace", "-f", "-qq", "-y", "-s", "4096", "-e", "signal=none", "-e", f"trace={CALLS}", "-o", str(log)]


def permitted():
    """An error in words when programs can't be traced here."""
    try:
        done = subprocess.run(["strace", "-f", "-e", "trace=none", "true"], capture_output=True, text=True, check=False)
    except FileNotFoundError:
        return "strace isn't installed (tests/install tests)"
    return None if done.returncode == 0 else "tracing system calls isn't permitted here: " + done.stderr.strip()


class Trace:
    def __init__(self, log, folder):
        """folder: where the program was started; relative names mean that one."""
        self.sockets = []  # every call for a socket or a connection, but pairs inside the program
        self.changed = set()  # absolute path of everything made, written to, renamed, removed
        self.calls = 0
        pending = {}
        for line in open(log, encoding="utf-8", errors="replace"):
            self.calls += 1
            process = line.split(" ", 1)[0]
            if line.rstrip().endswith("<unfinished ...>"):
                pending[process] = line[: line.rindex("<unfinished")].rstrip()
                continue
            resumed = re.match(r"^\d+ +<\.\.\. \w+ resumed>(.*)$", line)
            if resumed:
                line = pending.pop(process, "") + resumed.group(1)
            self._take(line, str(folder))
        for line in pending.values():  # ended in the middle of a call
            self._take(line, str(folder))

    def _take(self, line, folder):
        found = LINE.match(line)
        if not found:
            return
        call, rest = found.groups()
        if call in ("socket", "connect", "bind", "listen", "sendto") and "NULL, 0)" not in rest:
            self.sockets.append(f"{call}({rest}")
        opened = call in ("open", "openat", "openat2") and re.search(r"O_WRONLY|O_RDWR|O_CREAT|O_TRUNC|O_TMPFILE", rest)
        if not opened and call not in CHANGES:
            return
        if re.search(r"= -1 E", rest):
            return  # nothing came of it
        for base, name in PATH.findall(rest)[: 1 if opened else 2]:
            name = name.encode("latin-1", "replace").decode("unicode_escape").encode("latin-1", "replace").decode("utf-8", "replace")
            path = os.path.normpath(os.path.join(base or folder, name))
            if not path.startswith(DEVICES):
                self.changed.add(path)

    def outside(self, *folders):
        """What was changed anywhere else than below these."""
        inside = tuple(str(folder).rstrip("/") for folder in folders)
        return sorted(p for p in self.changed if not any(p == f or p.startswith(f + "/") for f in inside))
