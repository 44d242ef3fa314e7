"""Texts that try to break out of a file: what each is, and its text. The last characters of each are letters that occur
nowhere else, so that it is known again."""
import unicodedata

RLO, PDF, FSI, RLI = "\u202e", "\u202c", "\u2068", "\u2067"


def texts():
    all_texts = {
        "a script": "<script>alert(1)</script><img src=x onerror='y'> &amp; &lt; &#60; &nbsp",
        "an end of everything": "</td></tr></table></svg></style></title>--></script>]]>-->",
        "quotes": "\"'`”’“\" title=\"x\" onmouseover='y' \\\" \\u0022 \\",
        "a comment": "-- --> <!-- ]]> /* */ ' OR 1=1; --",
        "a caption of its own": "first\n\n7\n00:00:01.000 --> 00:00:02.000\nNOTE made up\n\nSTYLE\n::cue{}",
        "caption markup": "<i>{\\an8}<c.red>&lrm;<00:00:01.000> WEBVTT",
        "a formula": "=HYPERLINK(\"http://x.invalid\",\"see\")",
        "a plus formula": "+1+1",
        "a minus formula": "-2+3",
        "an at formula": "@SUM(1,2)",
        "a tab formula": "\t=1+1",
        "a return formula": "\r=1+1;\"x\",\"y\"",
        "a wide formula": "\uff1d1+1",
        "formulas behind semicolons": "x;=1+1;'@SUM(1)\t+2\n-3+4;\uff1d5",
        "fields": "a,b;c\t\"d\"\r\ne,\"f",
        "an event of its own": "x\n003  BL       AA    C        00:00:00:00 00:00:01:00 00:00:00:00 00:00:01:00\n* COMMENT: y\nM2   A  000.0",
        "a chapter of its own": "x\r\n0:30 made up\u20280:31 made up\u20290:32 made up\u00850:33 made up\x0b0:34\x0c0:35 made up",
        "colours for a terminal": "\x1b[2J\x1b]0;title\x07\x1b[31mred\x1b[0m \x9b31m \u009b31m\u0090x\u009c \x08\x08\x7f",
        "control signs": "x" + "".join(map(chr, range(32))) + "\x7f" + "".join(map(chr, range(0x80, 0xA0))),
        "an override left open": f"ab {RLO}dcba 321 {RLI}x",
        "an override closed too often": f"ab{PDF}{PDF}\u2069\u2069 {FSI}{RLO}dc",
        "right to left": "\u05e9\u05dc\u05d5\u05dd \u0645\u0631\u062d\u0628\u0627 (1, 2) abc \u05d0",
        "signs on signs": "Z" + "\u0336\u0301\u0308\u0323" * 40 + "a\u0300 \u0301",
        "what is no character": "\ufeffx\ufffe\uffff\ufdd0\U0001fffe y\u200b\u200d\u2060",
        "far away characters": "\U0001f3b5\U0001f468\u200d\U0001f469\u200d\U0001f467 \U0010fffd 𝄞 ﷽",
        "a way out": "../../../tmp/x/..\\..\\c:\\x /etc/passwd ~ $HOME `id` $(id) %n%s {0} {{x}}",
        "an option": "--out=x -rf *",
        "much": "word " * 400 + "w" * 400,
    }
    return [(what, text + f" mark{chr(97 + i // 26)}{chr(97 + i % 26)}") for i, (what, text) in enumerate(all_texts.items())]


def endless(letters):
    """Texts of so many letters that programs may take the square of it for: in one word, in one paragraph, on one letter."""
    return ["w" * letters, "some words " * (letters // 11), "e" + "\u0301" * (letters - 1)]


# Bytes that are no UTF-8 (RFC 3629): cut off, overlong, a surrogate, beyond U+10FFFF.
BROKEN = [b"x\xff\xfe y", b"cut \xe2\x82", b"over \xc0\xbc script \xe0\x80\xaf", b"half \xed\xa0\xbd \xed\xb8\x80", b"far \xf4\x90\x80\x80 \xf8\x88\x80\x80\x80"]


def harmless(text):
    """A text of the same shape: letters, sentences and lines stay where they are."""
    out = []
    for c in text.replace("\r\n", "\n"):
        if c == "\n" or c.isascii() and (c.isalnum() or c in " .,;:!?"):
            out.append(c)
        elif c in "\t\r\x0b\x0c\u0085\u2028\u2029 ":
            out.append(" ")
        elif unicodedata.category(c) == "Cc":
            continue
        else:
            out.append("_" if c.isascii() else "x")  # no word, or a part of one, as before
    return "".join(out)


def core(text):
    """What must come back of a text through any format: all but white space, control characters, the signs that close an
    open direction, and the joiner that SubRip needs; what is no character may come back as U+FFFD."""
    return "".join("\ufffd" if ord(c) & 0xFFFE == 0xFFFE or "\ufdd0" <= c <= "\ufdef" else c for c in text
                   if not c.isspace() and unicodedata.category(c) != "Cc" and c not in "\u202c\u2069\u2060")
