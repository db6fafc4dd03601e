"""A box of 5.3 x 4.1 x 2.7 m by finite differences in time: an independent room to hold the modal sum against.

Leapfrog on a cubic grid (the standard seven-point scheme of the wave equation), walls of a locally
reacting real admittance by one-sided differences. A wall of admittance b damps a mode by c b e S / 2V, as one of the
small absorption coefficient 8 b does in the formula of Morse and Bolt. Prints the places as the grid has them, and the
level of the response, dB re the source in free field at 1 m, at frequencies near its lowest isolated modes.

    python3 fd_room.py > fd_room.json
"""

import json
import sys

import numpy as np

C = 343.2
H = 0.1  # m
N = (53, 41, 27)  # cells; pressures sit at cell centres
ABSORPTION = 0.1
SECONDS = 2.0
LAMBDA = 1 / np.sqrt(3) * 0.999
DT = LAMBDA * H / C
STEPS = int(SECONDS / DT)
SOURCE = (4, 5, 3)
SEATS = [(38, 33, 12), (47, 8, 11)]


def run():
    beta = ABSORPTION / 8
    # Ghost cells: one layer each side holds the mirror image, so that the wall lies half a cell beyond the centres.
    p = np.zeros(tuple(n + 2 for n in N))
    before = np.zeros_like(p)
    loss = np.zeros(N)
    for axis in range(3):
        for end in (0, -1):
            index = [slice(None)] * 3
            index[axis] = end
            loss[tuple(index)] += beta * LAMBDA / 2
    out = np.zeros((len(SEATS), STEPS))
    inner = (slice(1, -1),) * 3
    for step in range(STEPS):
        for axis in range(3):
            first = [slice(None)] * 3
            second = [slice(None)] * 3
            first[axis], second[axis] = 0, 1
            p[tuple(first)] = p[tuple(second)]
            first[axis], second[axis] = -1, -2
            p[tuple(first)] = p[tuple(second)]
        total = (
            p[:-2, 1:-1, 1:-1] + p[2:, 1:-1, 1:-1]
            + p[1:-1, :-2, 1:-1] + p[1:-1, 2:, 1:-1]
            + p[1:-1, 1:-1, :-2] + p[1:-1, 1:-1, 2:]
            - 6 * p[inner]
        )
        after = (2 * p[inner] - (1 - loss) * before[inner] + LAMBDA**2 * total) / (1 + loss)
        if step < 2:
            # 4 pi delta(x) delta(t): 1 / r in free field. One cell, one step long, and taken back a step later, so that
            # no pressure stays in the closed room; the spectrum is divided by that of the pair.
            after[SOURCE] += (1, -1)[step] * 4 * np.pi * C**2 * DT**2 / H**3 / DT
        before, p = p, before
        p[inner] = after
        for k, seat in enumerate(SEATS):
            out[k, step] = after[seat]
    return out


def main():
    out = run()
    times = (np.arange(out.shape[1]) + 1) * DT
    modes = [(p, q, r) for p in range(4) for q in range(3) for r in range(2) if p + q + r]
    sizes = [n * H for n in N]
    rows = []
    for order in modes:
        f = C / 2 * np.sqrt(sum((o / s) ** 2 for o, s in zip(order, sizes)))
        if f > 80:
            continue
        grid = np.arange(f - 2, f + 2, 0.02)
        kernel = np.exp(-2j * np.pi * np.outer(grid, times))
        spectra = np.abs(kernel @ out.T) * DT / np.abs(1 - np.exp(-2j * np.pi * grid * DT))[:, None]
        for seat in range(len(SEATS)):
            best = int(np.argmax(spectra[:, seat]))
            rows.append(
                {"order": order, "seat": seat, "predictedHz": f, "peakHz": float(grid[best]),
                 "levelDb": float(20 * np.log10(spectra[best, seat]))}
            )
    place = lambda cells: [round((c + 0.5) * H, 3) for c in cells]
    json.dump(
        {"size": [round(s, 3) for s in sizes], "speed": C, "absorption": ABSORPTION, "source": place(SOURCE),
         "seats": [place(s) for s in SEATS], "peaks": rows},
        sys.stdout, indent=1,
    )


main()
