"""Band filters by another way than ours: the analogue prototypes that the W3C Audio EQ Cookbook states, taken to the
sample rate by scipy.signal.bilinear with the frequency pre-warped, and their response by scipy.signal.freqz. Argument:
JSON list of {kind, frequencyHz, gainDb, q, sampleRate}. JSON on standard output.
"""
import json
import sys
import numpy as np
from scipy.signal import bilinear, freqz, lfilter

out = []
for band in json.loads(sys.argv[1]):
    f, q, rate = band["frequencyHz"], band["q"], band["sampleRate"]
    a = 10 ** (band["gainDb"] / 40)
    w = 2 * rate * np.tan(np.pi * f / rate)
    num, den = {
        "peaking": ([1, a / q, 1], [1, 1 / (a * q), 1]),
        "all-pass": ([1, -1 / q, 1], [1, 1 / q, 1]),
        "low-shelf": (a * np.array([1, np.sqrt(a) / q, a]), [a, np.sqrt(a) / q, 1]),
        "high-shelf": (a * np.array([a, np.sqrt(a) / q, 1]), [1, np.sqrt(a) / q, a]),
    }[band["kind"]]
    scale = np.array([1 / w**2, 1 / w, 1])
    b, c = bilinear(num * scale, den * scale, rate)
    frequencies = np.geomspace(10, min(2000, 0.4 * rate), 40)
    response = freqz(b, c, worN=frequencies, fs=rate)[1]
    click = np.zeros(64)
    click[0] = 1
    out.append(
        {
            "frequencies": frequencies.tolist(),
            "re": response.real.tolist(),
            "im": response.imag.tolist(),
            "click": lfilter(b, c, click).tolist(),
        }
    )
json.dump(out, sys.stdout)
