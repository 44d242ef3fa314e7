"""The package in a Debian 12 that holds nothing else: installed by apt with what it depends on, used, and removed. As root."""

import os
import pathlib
import re
import shutil
import subprocess
import sys
import time

sys.path[1:1] = [str(pathlib.Path(__file__).parent.parent / "desk")]
from window import Screen, wait_for  # noqa: E402

USER = "--userspec=nobody:nogroup"


def mirror():
    """Where this machine's own apt takes Debian 12 from."""
    told = subprocess.run(["apt-get", "indextargets", "--format", "$(REPO_URI)", "Created-By: Packages", "Suite: bookworm"],
                          capture_output=True, text=True, check=False).stdout.split()
    told += subprocess.run(["apt-get", "indextargets", "--format", "$(REPO_URI)", "Created-By: Packages", "Codename: bookworm"],
                           capture_output=True, text=True, check=True).stdout.split()
    return told[0]


class Root:
    def __init__(self, folder):
        self.folder = folder
        self.run("debootstrap", "--variant=minbase", "bookworm", folder, mirror())
        for name in ("apt/sources.list", "apt/sources.list.d", "apt/apt.conf.d", "apt/keyrings", "resolv.conf", "ssl/certs"):
            source, target = pathlib.Path("/etc") / name, folder / "etc" / name
            if source.is_dir():
                shutil.copytree(source, target, dirs_exist_ok=True, symlinks=False, ignore_dangling_symlinks=True)
            elif source.exists():
                shutil.copy(source, target)

    def run(self, *command, env=None, timeout=1800):
        done = subprocess.run([str(part) for part in command], capture_output=True, text=True, check=False, timeout=timeout,
                              env={**os.environ, "DEBIAN_FRONTEND": "noninteractive", "LC_ALL": "C.UTF-8", **(env or {})})
        if done.returncode:
            raise AssertionError(f"{' '.join(map(str, command))[:200]}: {done.returncode}: {(done.stdout + done.stderr)[-1500:]}")
        return done.stdout

    def inside(self, *command, user=False):
        """With /proc there while it runs, and a home that is empty at first."""
        words = " ".join(f"'{part}'" for part in command)
        chroot = f"chroot {USER if user else ''} '{self.folder}' env HOME=/tmp/home LC_ALL=C.UTF-8 {words}"
        return self.run("unshare", "--mount", "--fork", "--pid", "sh", "-c",
                        f"mount -t proc proc '{self.folder}/proc' && exec {chroot}")

    def files(self):
        """Every path, but of what apt and dpkg note down of any package."""
        found = subprocess.run(["find", ".", "-xdev", "-not", "-type", "d"], cwd=self.folder, capture_output=True, text=True, check=True)
        return {path for path in found.stdout.splitlines() if not re.match(r"\./(proc|tmp|var/(cache|log|lib/(apt|dpkg)))/", path)}


def window(row, root, picture):
    """The installed window opens the project that it is given, on a screen of this machine."""
    screen = Screen()
    desk = subprocess.Popen(["chroot", USER, str(root.folder), "env", "-i", "PATH=/usr/bin:/bin", "HOME=/tmp/home", "LANG=C.UTF-8",
                             f"DISPLAY={screen.display}", "SDL_AUDIODRIVER=dummy", "luftpause-desk", "/tmp/work/song.luft"],
                            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        def shown():
            assert desk.poll() is None, f"the window ended with {desk.returncode}"
            return subprocess.run(["xdotool", "search", "--onlyvisible", "--name", "Over Water"], capture_output=True, text=True,
                                  check=False, env={**os.environ, "DISPLAY": screen.display}).stdout.split()
        wait_for("the window with the project", shown, 60)
        time.sleep(3)
        root.run("ffmpeg", "-v", "error", "-nostdin", "-y", "-f", "x11grab", "-video_size", "1280x800", "-i", screen.display,
                 "-frames:v", "1", picture)
        grey = subprocess.run(["ffmpeg", "-v", "error", "-i", str(picture), "-pix_fmt", "gray", "-f", "rawvideo", "-"],
                              capture_output=True, check=True).stdout
        row.must(len(set(grey)) > 100, "the screen stays nearly empty")
    finally:
        desk.kill()
        desk.wait()
        screen.close()


def install_and_remove(row, package, version, picture, scratch):
    if os.geteuid() != 0:
        raise AssertionError("a clean root can be made by root only")
    root = Root(scratch / "clean")
    shutil.copy(package, root.folder / "tmp")
    root.inside("apt-get", "update", "-qq")
    before = root.files()
    root.inside("apt-get", "install", "-y", "-qq", "--no-install-recommends", f"/tmp/{package.name}")
    came = {line for line in root.files() - before if "luftpause" in line}
    row.must(len(came) > 20, f"only {len(came)} files came")
    for folder in ("work", "home"):
        (root.folder / "tmp" / folder).mkdir()
        os.chmod(root.folder / "tmp" / folder, 0o777)
    sample = "/usr/share/luftpause/sample-project"
    row.must(root.inside("luftpause", "--version", user=True) == f"luftpause {version}\n", "it tells another version")
    root.inside("luftpause", "new", "/tmp/work/song.luft", "--title", "Over Water", "--words", f"{sample}/words.txt", user=True)
    root.inside("luftpause", "add", "/tmp/work/song.luft", f"{sample}/media/over-water-vasslow.mp4", user=True)
    root.inside("luftpause", "export", "/tmp/work/song.luft", "--all", "/tmp/work/out", user=True)
    row.must(len(list((root.folder / "tmp/work/out").iterdir())) > 20, "few files were exported")
    row.must(not any((root.folder / "tmp/home").iterdir()), "the command line wrote into the home")
    window(row, root, picture)
    root.inside("apt-get", "purge", "-y", "-qq", "luftpause")
    left = {line for line in root.files() if "luft" in line}
    row.must(not left, f"left behind: {sorted(left)}")
    root.inside("apt-get", "autoremove", "-y", "-qq", "--purge")
    row.run()
