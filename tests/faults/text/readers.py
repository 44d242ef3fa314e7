"""Files read by something that isn't ours: each returns what the file is made of (its structure), and its words."""
import csv
import html.parser
import io
import json
import re
import subprocess


class _Page(html.parser.HTMLParser):
    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.shape, self.words, self.inside = [], [], []

    def handle_starttag(self, tag, attributes):
        if "svg" not in self.inside:  # drawn letters differ in number
            self.shape.append((tag, tuple(name for name, _ in attributes), dict(attributes).get("class")))
        self.words += [value or "" for _, value in attributes]
        if tag not in ("meta", "link", "br", "hr", "img", "input", "col"):
            self.inside.append(tag)

    def handle_startendtag(self, tag, attributes):
        self.handle_starttag(tag, attributes)
        if self.inside and self.inside[-1] == tag:
            self.inside.pop()

    def handle_endtag(self, tag):
        if self.inside and self.inside[-1] == tag:
            self.inside.pop()

    def handle_comment(self, data):
        self.shape.append(("comment", data))

    def handle_data(self, data):
        self.words.append(data)


def page(file):
    subprocess.run(["xmllint", "--noout", "--nonet", file], check=True, capture_output=True)
    reader = _Page()
    reader.feed(file.read_text(encoding="utf-8"))
    return reader.shape, "".join(reader.words)


def _keys(value, words):
    if isinstance(value, dict):
        return [(key, _keys(item, words)) for key, item in value.items()]
    if isinstance(value, list):
        return [_keys(item, words) for item in value]
    if isinstance(value, str):
        words.append(value)
    return type(value).__name__ if isinstance(value, (str, bool, type(None))) else "number"


def tree(file):
    words = []
    shape = _keys(json.loads(file.read_bytes().decode("utf-8")), words)
    return shape, "\n".join(words)


def table(file):
    text = file.read_bytes().decode("utf-8")
    rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    # Where the comma is the decimal sign, a spreadsheet parts the same file at semicolons, or at tabs.
    elsewhere = [row for mark in ";\t" for row in csv.reader(io.StringIO(text, newline=""), delimiter=mark)]
    for row in rows[1:] + elsewhere:
        for cell in row:
            if cell[:1] in tuple("=+-@\t\r\n\uff1d\uff0b\uff0d\uff20") and cell and not re.fullmatch(r"-?[\d.]+", cell):
                raise ValueError(f"a spreadsheet would run {cell[:30]!r}")
    # An apostrophe in front stands for the sign after it, as docs/files.md says.
    bare = [re.sub("(^|(?<=[;\t\r\n]))'(?='*[=+\\-@\uff1d\uff0b\uff0d\uff20])|^'(?='*[\t\r\n])", "", cell) for row in rows for cell in row]
    return [len(row) for row in rows], "\n".join(bare)


TIMES = re.compile(r"^(\d+:)?\d\d:\d\d[.,]\d{3} --> (\d+:)?\d\d:\d\d[.,]\d{3}\s*$", re.M)


def captions(file):
    """FFmpeg must find as many cues as there are lines of times, and each where it stands."""
    text = file.read_text(encoding="utf-8")
    say = subprocess.run(["ffprobe", "-v", "error", "-show_entries", "packet=pts_time,duration_time", "-of", "csv=p=0", file],
                         check=True, capture_output=True, text=True).stdout.split()
    written = TIMES.findall(text)
    if len(say) != len(written) or text.count("-->") != len(written):
        raise ValueError(f"{len(written)} captions, FFmpeg finds {len(say)}, arrows {text.count('-->')}")
    read = subprocess.run(["ffmpeg", "-v", "error", "-i", file, "-f", "ass", "-"], check=True, capture_output=True).stdout.decode()
    words = [line.split(",", 9)[9] for line in read.splitlines() if line.startswith("Dialogue:")]
    joined = "\n".join(words).replace("\\N", "\n")
    if file.suffix == ".vtt":  # the standard's own escapes; FFmpeg leaves what looks like markup out
        import html
        joined = html.unescape("\n".join(line for line in text.splitlines() if not TIMES.match(line)))
    return None, joined


LINES = re.compile(r"^(TITLE: .*|FCM: (NON-)?DROP FRAME|\d{3}  .{8} .{5} C {8}(\d\d:\d\d:\d\d[:;]\d\d ?){4}"
                   r"|M2   .{8} {7}\d{3}\.\d {16}\d\d:\d\d:\d\d[:;]\d\d|\* (FROM CLIP NAME|COMMENT|LOC): .*|)$")


def edit_list(file):
    lines = file.read_text(encoding="utf-8").splitlines()  # at every line end that Unicode knows
    for line in lines:
        if not LINES.match(line):
            raise ValueError(f"no line of an edit list: {line[:60]!r}")
    return [line[:3] if line[:1].isdigit() else line.split(":")[0][:9] for line in lines if line[:2] != "M2"], "\n".join(lines)


def chapters(file):
    lines = file.read_text(encoding="utf-8").splitlines()
    return [re.match(r"(\d+:)+\d\d ", line)[0] is not None for line in lines], "\n".join(lines)


def plain(file):
    return None, file.read_text(encoding="utf-8")


def paper(file):
    text = subprocess.run(["pdftotext", "-enc", "UTF-8", file, "-"], check=True, capture_output=True).stdout.decode()
    if not text.strip():
        raise ValueError("no word on any page")
    return None, None  # shaped letters don't read back; it must be whole


def pictures(folder):
    names = sorted(path.name for path in folder.iterdir())
    for path in folder.glob("*.svg"):
        subprocess.run(["xmllint", "--noout", "--nonet", path], check=True, capture_output=True)
    return [name for name in names if name.endswith(".svg")][:1], None


def reader_of(name):
    if name.endswith("chapters.txt"):
        return chapters
    return {"html": page, "json": tree, "otio": tree, "csv": table, "vtt": captions, "srt": captions, "edl": edit_list,
            "txt": plain, "pdf": paper}.get(name.rpartition(".")[2], pictures)
