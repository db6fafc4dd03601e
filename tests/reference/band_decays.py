"""T20 and T30 per third-octave of WAV files, by SciPy: time-reversed Butterworth band-pass (scipy.signal.butter, sosfilt)
at the full rate with the last tenth faded out, truncation where the late slope of the 50 ms mean
meets the noise behind it (Lundeby et al. 1995), backward integration less the noise with the
energy of the late slope added, and numpy.polyfit. Arguments: forward or reversed, then FILE CHANNEL ONSET_SECONDS each.
JSON on standard output.
"""
import json
import sys
import numpy as np
from scipy.io import wavfile
from scipy.signal import butter, sosfilt

G = 10**0.3


def read_band(x, rate, onset, centre, backwards):
    sos = butter(3, [centre * G ** (-1 / 6), centre * G ** (1 / 6)], "bandpass", fs=rate, output="sos")
    fade = round(0.1 * (len(x) - onset))
    x = x.copy()
    x[-fade:] *= np.cos(np.pi / 2 * (np.arange(fade) + 0.5) / fade) ** 2
    y = sosfilt(sos, x[::-1])[::-1] if backwards else sosfilt(sos, x)
    p = y[onset : len(x) - fade] ** 2
    block = round(0.05 * rate)
    sums = np.concatenate([[0], np.cumsum(p)])
    means = (sums[block:] - sums[:-block]) / block
    noise = p[int(0.9 * len(p)) :].mean()
    top = int(np.argmax(means))
    if 10 * np.log10(means[top] / noise) < 12:
        return {"centre": centre, "range": float(10 * np.log10(means[top] / noise)), "t20": None, "t30": None}
    for _ in range(5):
        level = 10 * np.log10(means / noise)
        below = np.nonzero(level[top:] < 8)[0]
        stop = top + (below[0] if len(below) else len(level) - 1 - top)
        above = np.nonzero(level[top:] < 23)[0]
        start = top + (above[0] if len(above) else 0)
        if stop - start < rate * 0.02:
            start = top
        t = (np.arange(start, stop) + block / 2) / rate
        if len(t) < 10:
            return {"centre": centre, "range": float(level[top]), "t20": None, "t30": None}
        slope, intercept = np.polyfit(t, level[start:stop], 1)
        end = min(len(p), int(-intercept / slope * rate))
        tail_noise = p[min(int(0.9 * len(p)), end + int(-7.5 / slope * rate)) :].mean()
        if abs(10 * np.log10(tail_noise / noise)) < 0.05:
            break
        noise = tail_noise
    rate_of_power = -slope * np.log(10) / 10 / rate
    tail = noise * 10 ** ((intercept + slope * end / rate) / 10) / rate_of_power
    curve = np.maximum(np.cumsum(p[:end][::-1] - noise)[::-1] + tail, 1e-300)
    curve = 10 * np.log10(curve / curve[0])
    added = 10 * np.log10(tail / (p[:end].sum() + tail))
    out = {"centre": centre, "range": float(level[top]), "noise": float(10 * np.log10(noise))}
    for name, lo in (("t20", -25), ("t30", -35)):
        i = np.nonzero((curve <= -5) & (curve >= lo))[0]
        # ISO 3382: noise, and what is added for the missing end, lie 10 dB below what is read.
        if curve[-1] > lo or len(i) < 10 or added > lo - 10:
            out[name] = None
        else:
            out[name] = float(-60 / np.polyfit(i / rate, curve[i], 1)[0])
    return out


result = []
backwards = sys.argv[1] == "reversed"
for path, channel, onset in zip(sys.argv[2::3], sys.argv[3::3], sys.argv[4::3]):
    rate, x = wavfile.read(path)
    if x.ndim > 1:
        x = x[:, int(channel) - 1]
    if x.dtype.kind == "i":
        x = x / float(np.iinfo(x.dtype).max + 1)
    x = x.astype(float)
    block = round(0.05 * rate)
    means = x[: len(x) // block * block].reshape(-1, block).mean(axis=1)
    if abs(np.median(means)) > 1e-3 * np.abs(x).max():
        x = x - np.median(means)
    bands = [1000 * G ** (k / 3) for k in range(-14, -5)]
    result.append([read_band(x, rate, round(float(onset) * rate), c, backwards) for c in bands])
print(json.dumps(result))
