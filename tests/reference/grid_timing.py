"""Seconds of a Hann spectrogram by SciPy: median of RUNS warm runs, for each padded length given, as JSON."""
import json
import sys
import time
import numpy as np
from scipy.fft import rfft
from scipy.signal.windows import hann

rate, runs, slices, window = 48000, int(sys.argv[1]), 101, 14400
x = np.random.default_rng(1).standard_normal(2 * rate)
w = hann(window + 1, sym=True)
out = {}
for padded in map(int, sys.argv[2:]):
    times = []
    for i in range(runs + 3):
        begin = time.perf_counter()
        frames = np.lib.stride_tricks.sliding_window_view(x, window + 1)[: slices * 480 : 480] * w
        spectrum = rfft(frames, padded)[:, : int(200 * padded / rate) + 1]
        db = 10 * np.log10(spectrum.real**2 + spectrum.imag**2 + 1e-30)
        times.append(time.perf_counter() - begin)
    out[padded] = float(np.median(times[3:]))
print(json.dumps(out))
