"""Magnitude responses of WAV files by SciPy, as JSON on standard output: scipy.fft.rfft of the full-rate samples under
the stated window, power means between band edges by the trapezoid rule, scipy.signal.welch for the noise, and
scipy.signal.find_peaks. Arguments: FILE CHANNEL ONSET_SECONDS OFFSET, repeated; OFFSET is subtracted from the samples.
"""
import json
import sys
import numpy as np
from scipy.fft import rfft
from scipy.io import wavfile
from scipy.signal import find_peaks, welch

FROM, TO = 20.0, 200.0


def window(count, lead):
    n = np.arange(count)
    w = np.ones(count)
    if lead > 0:
        w[:lead] = np.sin(np.pi / 2 * (n[:lead] + 0.5) / lead) ** 2
    fade = max(1, round(0.1 * count))
    w[count - fade :] *= np.sin(np.pi / 2 * (count - 1 - n[count - fade :] + 0.5) / fade) ** 2
    return w


def smooth(f, p, low, high):
    out = []
    for a, b in zip(low, high):
        grid = np.linspace(max(f[0], a), min(f[-1], b), 4001)
        out.append(np.trapz(np.interp(grid, f, p), grid) / (grid[-1] - grid[0]))
    return np.array(out)


def response(path, channel, onset_seconds, offset):
    rate, x = wavfile.read(path)
    x = x if x.ndim == 1 else x[:, channel - 1]
    if x.dtype.kind == "i":
        x = x / float(np.iinfo(x.dtype).max + 1)
    x = x.astype(float) - offset
    onset = onset_seconds * rate
    begin = max(0, round(onset - 0.05 * rate))
    end = min(len(x), int(onset + 4 * rate))
    lead = round(0.02 * rate) if onset_seconds > 0.05 else 0
    w = window(end - begin, lead)
    size = 2**21
    spectrum = np.abs(rfft(x[begin:end] * w, size)) ** 2
    bins = np.arange(size // 2 + 1) * rate / size
    f = np.arange(1, 420, 0.125)
    p = np.interp(f, bins, spectrum)
    centres = FROM * (TO / FROM) ** (np.arange(41) / 40)
    erb = 24.673 * (0.004368 * centres + 1)
    third = 2 ** (1 / 6)
    tail = x[int(np.ceil(end - 0.25 * (end - onset))) : end]
    nf, density = welch(tail, rate, window="hann", nperseg=min(len(tail), round(0.5 * rate)), detrend=False)
    noise = density * rate / 2 * np.sum(w**2)
    at = (f >= FROM) & (f <= TO)
    levels = 10 * np.log10(p[at])
    peaks, _ = find_peaks(levels, prominence=6)
    dips, _ = find_peaks(-levels, prominence=6)
    third_levels = 10 * np.log10(smooth(f, p, centres / third, centres * third))
    return {
        "none": levels.tolist(),
        "centres": centres.tolist(),
        "third": third_levels.tolist(),
        "erb": (10 * np.log10(smooth(f, p, np.maximum(1, centres - erb / 2), centres + erb / 2))).tolist(),
        "noise": (10 * np.log10(smooth(nf, noise, centres / third, centres * third))).tolist(),
        "peaks": f[at][peaks].tolist(),
        "dips": f[at][dips].tolist(),
    }


args = sys.argv[1:]
print(json.dumps([response(p, int(c), float(o), float(d)) for p, c, o, d in zip(*(args[i::4] for i in range(4)))]))
