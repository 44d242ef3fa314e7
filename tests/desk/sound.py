"""Making a recording whose pitch and length are known, and measuring what was played of it."""

import array
import math
import wave

RATE = 48000
PITCH = 220.0           # Hz
BEFORE, LENGTH, AFTER = 0.5, 1.0, 1.5  # seconds of silence, tone, silence
BLOCK = RATE // 100


def write_tone(path):
    """A tone with the falling partials of a voice, which alone would be easy to find by chance."""
    samples = array.array("h", [0] * int(BEFORE * RATE))
    count = int(LENGTH * RATE)
    for i in range(count):
        swell = min(1.0, i / (0.02 * RATE), (count - i) / (0.02 * RATE))
        value = sum(math.sin(2 * math.pi * PITCH * n * i / RATE) / n for n in range(1, 9))
        samples.append(int(9000 * swell * value))
    samples.extend([0] * int(AFTER * RATE))
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes(samples.tobytes())


def write_noise(path, seconds=30):
    """What SDL's disk driver takes for the microphone: one channel of floats, from a small generator."""
    samples, seed = array.array("f"), 1
    for _ in range(seconds * RATE):
        seed = (seed * 1103515245 + 12345) % (1 << 31)
        samples.append(seed / (1 << 31) * 0.2 - 0.1)
    path.write_bytes(samples.tobytes())


def captured(path, since=0):
    """The left channel of what SDL's disk driver has written from that byte on."""
    data = path.read_bytes()[since:]
    both = array.array("f")
    both.frombytes(data[:len(data) // 8 * 8])
    return both[::2]


def stretches(samples, least=0.2):
    """(first, last) sample of every stretch of sound that has silence on both sides."""
    loud = [max(samples[i:i + BLOCK], default=0) > 0.02 for i in range(0, len(samples), BLOCK)]
    found, start = [], None
    for i, sounds in enumerate(loud):
        if sounds and start is None:
            start = i
        elif not sounds and start is not None:
            # A pause of a few blocks isn't the end: the tone's is a second long.
            if any(loud[i:i + 10]):
                continue
            if start > 0 and (i - start) * BLOCK >= least * RATE:
                found.append((start * BLOCK, i * BLOCK))
            start = None
    return found


def pitch(samples):
    """Autocorrelation over 80 to 480 Hz; the first peak that is nearly as high as the highest."""
    window = samples[:4096]
    low, high = RATE // 480, RATE // 80
    score = [sum(a * b for a, b in zip(window[:2400], window[lag:lag + 2400])) for lag in range(high + 2)]
    best = max(score[low:high])
    for lag in range(low, high):
        before, here, after = score[lag - 1], score[lag], score[lag + 1]
        if here >= 0.9 * best and before <= here >= after:
            return RATE / (lag + 0.5 * (before - after) / (before - 2 * here + after))
    raise AssertionError("no pitch in what was played")
