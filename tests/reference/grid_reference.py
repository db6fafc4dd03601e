"""Levels of Hann slices through scipy.fft.rfft of the full-rate samples, as JSON on standard output.

Without an argument: of the signal that tests/support/signals.ts makes by the same formulas (the output is kept as
grid_reference.json). With a mono float WAV file and its onset in samples: of that file.
"""
import json
import sys
import numpy as np
from scipy.fft import rfft
from scipy.io import wavfile
from scipy.signal.windows import hann

PADDED = 131072
STEP = 4
WINDOW = 14400  # 0.3 s at 48 kHz


def reference_signal(rate=48000, seconds=2):
    n = np.arange(round(seconds * rate))
    x = np.zeros(len(n))
    onset = round(0.02 * rate)
    for f, decay, a in [(31.7, 1.1, 0.8), (47.3, 0.6, 1), (50.9, 0.7, 0.6), (88.2, 0.35, 0.9), (143.6, 0.25, 0.7)]:
        t = (n - onset) / rate
        x += np.where(t >= 0, a * np.exp(-6.907755279 * np.maximum(t, 0) / decay) * np.sin(2 * np.pi * f * t), 0)
    x[onset] += 3
    for k in range(40):
        x += 0.01 * np.sin(2 * np.pi * 260 * 1.11**k / rate * n + k)
    return x, rate, onset


def levels(x, rate, onset):
    window = hann(WINDOW + 1, sym=True)
    padded = np.concatenate([np.zeros(WINDOW), x, np.zeros(WINDOW + rate)])
    bins = np.arange(int(np.ceil(20 * PADDED / rate)), int(200 * PADDED / rate), STEP)
    rows = []
    for slice_index in range(11):
        start = WINDOW + onset + round(slice_index * 0.1 * rate) - WINDOW // 2
        rows.append(np.abs(rfft(padded[start : start + WINDOW + 1] * window, PADDED))[bins])
    power = np.array(rows) ** 2
    top = power[0].max()
    db = 10 * np.log10(np.maximum(power / top, 1e-30))
    return {
        "frequencies": [float(b * rate / PADDED) for b in bins],
        "referenceDbFs": float(10 * np.log10(top * (2 / window.sum()) ** 2)),
        "levels": [[round(float(v), 4) for v in row] for row in db],
    }


if len(sys.argv) > 1:
    rate, x = wavfile.read(sys.argv[1])
    x = x.astype(float)
    print(json.dumps(levels(x - 0.0, rate, int(sys.argv[2]))))
else:
    print(json.dumps(levels(*reference_signal())))
