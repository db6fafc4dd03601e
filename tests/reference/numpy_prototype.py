"""Resonances that the benchmark's NumPy prototype (pipe.py) finds in the fast subset: sets S, P and R at 55 dB, seeds 1 to 4,
in recordings made by the benchmark's own generator (synth.py). Another implementation, in another language, of other filters,
windows and noise model. Argument: the benchmark's folder, which is not part of the project. JSON on standard output, kept as
numpy_prototype.json:
    python3 tests/reference/numpy_prototype.py ../shared/benchmark > tests/reference/numpy_prototype.json
Made with NumPy and SciPy of the versions named in the file.
"""
import json
import os
import sys

os.environ["OPENBLAS_NUM_THREADS"] = "1"
import numpy as np
import scipy

sys.path.insert(0, os.path.join(sys.argv[1], "prototype"))
import pipe
import synth

PAIRS = [0.6, 1.0, 1.5, 2.5, 4.0, 6.0]
L, W, H = 5.3, 4.1, 2.7
ROOM = (L * W * H, 2 * (L * W + L * H + W * H), 4 * (L + W + H))
MAKE = {
    "S": lambda seed: synth.make_sparse(seed, snr_db=55),
    "P": lambda seed: synth.make_sparse(seed, snr_db=55, pairs=PAIRS),
    "R": lambda seed: synth.make_room(seed, snr_db=55, diff_db=-45, nseat=1),
}


def told(q):
    """Frequency (Hz), its sd, decay time (s), its relative sd; single modes that the prototype is confident of."""
    return [round(float(v), 5) for v in (q["f"], q["sf"], q["T"], q["sT"])]


def confident(q):
    return q["kind"] == "mode" and q["sf"] <= 0.25 and q["sT"] <= 0.1 and 0.12 <= q["T"] <= 5 and 18 <= q["f"] <= 200


recordings = []
for kind, make in MAKE.items():
    for seed in (1, 2, 3, 4):
        irs, _, rate = make(seed)
        found = pipe.analyse(irs, rate, room=ROOM if kind == "R" else None)
        found.sort(key=lambda q: q["f"])
        recordings.append(
            {
                "set": kind,
                "seed": seed,
                "confident": [told(q) for q in found if confident(q)],
                "others": [told(q) for q in found if not confident(q)],
            }
        )
print(f'{{"numpy": "{np.__version__}", "scipy": "{scipy.__version__}", "recordings": [')
print(",\n".join(json.dumps(one) for one in recordings))
print("]}")
