"""analysis_keys.py FILE: the analysis is valid JSON by Python's own reader, with all that its schema promises."""
import json
import sys


def no_constants(word):
    raise ValueError(f"{word} is not JSON")


with open(sys.argv[1], encoding="utf-8") as file:
    a = json.load(file, parse_constant=no_constants)

number = (int, float)
null = type(None)


def check(value, kinds, what):
    assert isinstance(value, kinds) and not (isinstance(value, bool) and kinds == number), f"{what}: {value!r}"


def share(value, what):
    check(value, number, what)
    assert 0 <= value <= 1, f"{what}: {value!r}"


def keys(value, wanted, what):
    missing = [key for key in wanted if key not in value]
    assert not missing, f"{what} lacks {missing}"


keys(a, ["schema", "hop_s", "tuning_hz", "media", "loudness", "curves", "breaths", "phrases", "switches", "notes"], "top")
assert a["schema"] == "luftpause-analysis/1"
assert a["hop_s"] == 0.010
check(a["tuning_hz"], number, "tuning_hz")

media = a["media"]
keys(media, ["duration_s", "sample_rate_hz", "channels", "has_video", "frame_rate"], "media")
check(media["duration_s"], number, "duration_s")
check(media["sample_rate_hz"], int, "sample_rate_hz")
check(media["channels"], int, "channels")
check(media["has_video"], bool, "has_video")
check(media["frame_rate"], number if media["has_video"] else null, "frame_rate")

for key in ["integrated_lufs", "range_lu", "true_peak_dbtp"]:
    check(a["loudness"][key], (*number, null), key)

curves = ["f0_hz", "voicing", "loudness_lufs", "level_db", "cpp_db", "h1h2_db", "ring_db", "centroid_hz", "f1_hz",
          "f2_hz", "head_register"]
keys(a["curves"], curves, "curves")
frames = len(a["curves"]["f0_hz"])
assert abs(frames * a["hop_s"] - media["duration_s"]) <= 0.05, (frames, media["duration_s"])
for key, curve in a["curves"].items():
    assert len(curve) == frames, f"{key} has {len(curve)} of {frames} values"
    for value in curve:
        check(value, (*number, null), key)
        assert not (key.endswith("_hz") and value == 0), f"{key} has a 0"
        if key in ("voicing", "head_register") and value is not None:
            share(value, key)


def span(mark, what):
    assert 0 <= mark["start_s"] < mark["end_s"] <= media["duration_s"] + 0.05, f"{what}: {mark}"


DYNAMICS = ("pp", "p", "mp", "mf", "f", "ff", None)
for breath in a["breaths"]:
    span(breath, "breath")
    assert breath["evidence"] in ("heard", "inferred")
    share(breath["confidence"], "breath")
for phrase in a["phrases"]:
    span(phrase, "phrase")
    share(phrase["confidence"], "phrase")
    keys(phrase, ["level", "dynamic"], "phrase")
    assert phrase["dynamic"] in DYNAMICS
    if phrase["level"] is not None:
        keys(phrase["level"], ["shape", "change_db", "rise_db", "peak_at", "confidence"], "level")
        share(phrase["level"]["confidence"], "level")
        assert phrase["level"]["rise_db"] >= 0
        if phrase["level"]["peak_at"] is not None:
            share(phrase["level"]["peak_at"], "peak_at")
for change in a["switches"]:
    check(change["time_s"], number, "switch")
    assert {change["from"], change["to"]} == {"chest", "head"}
    share(change["confidence"], "switch")
for note in a["notes"]:
    span(note, "note")
    for key in ["midi", "cents", "level_db"]:
        check(note[key], number, key)
    assert -50.05 <= note["cents"] <= 50.05, note["cents"]
    if note["vibrato"] is not None:
        for key in ["rate_hz", "extent_cents", "regularity"]:
            check(note["vibrato"][key], number, key)
    assert note["onset"]["kind"] in ("glottal", "breathy", "balanced")
    share(note["onset"]["confidence"], "onset")
    assert note["offset"]["kind"] in ("clean", "breathy", "trailing")
    for key in ["f1_hz", "f2_hz"]:
        check(note["vowel"][key], (*number, null), key)
    assert note["register"] in ("chest", "head", None)
    share(note["confidence"], "note")
    assert note["dynamic"] in DYNAMICS

print(frames, len(a["notes"]), len(a["breaths"]), len(a["phrases"]), len(a["switches"]))
