"""check.py BUILD SOURCE: the package of this build, unpacked where nothing else of it is, and what other programs make of it.
With LUFT_LONG also installed into a clean root: tests/release/run."""

import os
import pathlib
import re
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True
sys.path[1:1] = [str(pathlib.Path(__file__).parent.parent / "faults")]
import clean_root  # noqa: E402
from fault_row import LONG, Row, end  # noqa: E402

COMMAND = "tests/release/run" if LONG else "ctest --test-dir build -R faults_release"
ID = "org.luftpause.desk"
FILES = f"""bin/luftpause bin/luftpause-desk share/man/man1/luftpause.1.gz share/man/man1/luftpause-desk.1.gz
share/applications/{ID}.desktop share/metainfo/{ID}.metainfo.xml share/mime/packages/{ID}.xml
share/icons/hicolor/scalable/apps/luftpause.svg share/icons/hicolor/48x48/apps/luftpause.png
share/icons/hicolor/128x128/apps/luftpause.png share/doc/luftpause/copyright share/doc/luftpause/changelog.gz
share/doc/luftpause/guide.md share/doc/luftpause/desk.md share/luftpause/sample-project/words.txt
share/luftpause/sample-project/media/over-water-vasslow.mp4""".split()


def output(*command, **how):
    """What a program said on both channels; it must end well."""
    done = subprocess.run([str(part) for part in command], capture_output=True, text=True, check=False, **how)
    if done.returncode:
        raise AssertionError(f"{command[0]} {command[1] if len(command) > 1 else ''}: {done.returncode}: {done.stdout}{done.stderr}")
    return done.stdout + done.stderr


def fails(*command):
    return subprocess.run([str(part) for part in command], capture_output=True, check=False).returncode != 0


def pack(build, scratch):
    # A narrow umask must not show in it.
    output("cpack", "-G", "DEB", "-B", scratch / "pack", "--config", build / "CPackConfig.cmake", cwd=build, umask=0o077)
    (package,) = (scratch / "pack").glob("*.deb")
    output("dpkg-deb", "-x", package, scratch / "root")
    return package, scratch / "root/usr"


def unpacked(build, source, scratch):
    version = re.search(r"project\(luftpause VERSION ([0-9.]+)", (source / "CMakeLists.txt").read_text()).group(1)
    with Row("release", "Run from where it was installed, with nothing else of it there", "the package unpacked into an empty folder, or "
             "installed into a clean Debian 12 (long version); the job done from there, with an empty home", COMMAND) as row:
        package, usr = pack(build, scratch)
        for name in FILES:
            row.must((usr / name).is_file() and (usr / name).stat().st_size > 0, f"{name} isn't in the package")
        row.must(output("dpkg-deb", "-f", package, "Version").strip() == version, "the package has another version")
        shut = [line for line in output("dpkg-deb", "-c", package).splitlines() if not re.match(r"(drwxr-xr-x|-rwxr-xr-x|-rw-r--r--) root/root ", line)]
        row.must(not shut, f"not for everybody: {shut[:3]}")
        needs = output("dpkg-deb", "-f", package, "Depends")
        row.must("libavformat" in needs and "libwxgtk" in needs, f"it needs only {needs}")
        work, home = scratch / "work", scratch / "home"
        work.mkdir()
        home.mkdir()
        alone = {"cwd": work, "env": {"PATH": f"{usr}/bin:/usr/bin:/bin", "HOME": str(home), "LANG": "C.UTF-8"}}
        row.must(output("luftpause", "--version", **alone) == f"luftpause {version}\n", "it tells another version")
        row.must(output("luftpause-desk", "--version", **alone) == f"luftpause-desk {version}\n", "the window tells another version")
        sample = usr / "share/luftpause/sample-project"
        output("luftpause", "new", "song.luft", "--title", "Over Water", "--words", sample / "words.txt", **alone)
        output("luftpause", "add", "song.luft", sample / "media/over-water-vasslow.mp4", **alone)
        output("luftpause", "export", "song.luft", "--as", "cues-html", "--out", "cues.html", **alone)
        row.must("Over Water" in (work / "cues.html").read_text(), "the cue sheet lacks the title")
        row.must(not any(home.iterdir()), "something was written into the home")
        row.run()
        if LONG:
            clean_root.install_and_remove(row, package, version, build / "installed.png", scratch)
    return usr, work


def told_by_others(usr, work, scratch):
    share = usr / "share"
    with Row("release", "A desktop entry, file type, description or manual that other programs can't read", "each read by Debian's own checker, "
             "which must refuse a broken copy", COMMAND) as row:
        for file, checker, flaw in (
                (share / f"applications/{ID}.desktop", ["desktop-file-validate"], ("Exec=", "Exe=")),
                (share / f"metainfo/{ID}.metainfo.xml", ["appstreamcli", "validate", "--no-net"], ("<id>", "<id>no ")),
                (share / f"icons/hicolor/scalable/apps/luftpause.svg", ["xmllint", "--noout"], ("</svg>", "<svg>"))):
            row.run()
            output(*checker, file)
            broken = scratch / file.name
            broken.write_text(file.read_text().replace(*flaw))
            row.must(fails(*checker, broken), f"{checker[0]} takes a broken {file.name}")
        entry = (share / f"applications/{ID}.desktop").read_text()
        row.must("Exec=luftpause-desk %f" in entry and "MimeType=application/x-luftpause;" in entry, "the window isn't offered for projects")
        for page in ("luftpause.1.gz", "luftpause-desk.1.gz"):
            row.run()
            shown = output("man", "-l", "--warnings", "-E", "UTF-8", share / "man/man1" / page, env={**os.environ, "MANWIDTH": "100", "MANPAGER": "cat"})
            row.must("warning:" not in shown and "EXAMPLE" not in shown and "luftpause" in shown, f"{page}: {shown[:300]}")
        manual = output("man", "-l", share / "man/man1/luftpause.1.gz", env={**os.environ, "MANWIDTH": "200", "MANPAGER": "cat"})
        help_ = output(usr / "bin/luftpause", "--help")
        for verb in re.findall(r"^  ([a-z]+) {3,}", help_.split("Subcommands:")[1], re.M):
            row.must(f"luftpause {verb} " in manual, f"the manual lacks '{verb}'")

    with Row("release", "A project that the system can't tell from other files", "asked of the desktop's own library (gio), by name, by what is inside, "
             "and for a database that is no project", COMMAND) as row:
        data = scratch / "data"
        packages = data / "mime/packages"
        packages.mkdir(parents=True)
        for file in (share / f"mime/packages/{ID}.xml", pathlib.Path("/usr/share/mime/packages/freedesktop.org.xml")):
            (packages / file.name).write_bytes(file.read_bytes())
        output("update-mime-database", data / "mime")
        (work / "renamed").write_bytes((work / "song.luft").read_bytes())
        output("sqlite3", work / "other", "CREATE TABLE t(a)")
        for name, kind in (("song.luft", "x-luftpause"), ("renamed", "x-luftpause"), ("other", "vnd.sqlite3")):
            row.run()
            told = output("gio", "info", "-a", "standard::content-type", work / name,
                          env={**os.environ, "XDG_DATA_HOME": str(data), "XDG_DATA_DIRS": str(data)})
            row.must(f"content-type: application/{kind}\n" in told, f"{name}: {told}")


def main():
    build, source = (pathlib.Path(a).absolute() for a in sys.argv[1:3])
    with tempfile.TemporaryDirectory(prefix="luft-release-") as name:
        scratch = pathlib.Path(name)
        usr, work = unpacked(build, source, scratch)
        told_by_others(usr, work, scratch)
    end()


main()
