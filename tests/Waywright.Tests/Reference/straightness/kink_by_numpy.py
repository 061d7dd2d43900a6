"""The best single bend by another route, for each four lines of a file: positions, heights, scatter of each station, one error shape.

Smooth part: polynomial of degree 4. For knees at the stations and at quarters of the gaps, from the third station to the third from the end, a weighted
least-squares fit by NumPy; then SciPy looks within each gap for the knee with the least sum of squares.
Prints the largest |angle| / u, u from the scatter about the bent line (not below half of that given) and the shape; position; angle in um/m.
"""
import sys

import numpy as np
from scipy.optimize import minimize_scalar

DEGREE = 4


def fit(x, t, z, scatter, knee):
    columns = np.column_stack([np.vander(t, DEGREE + 1, increasing=True), np.maximum(x - knee, 0)]) / scatter[:, None]
    inverse = np.linalg.pinv(columns, rcond=1e-15)
    coefficients = inverse @ (z / scatter)
    left = z / scatter - columns @ coefficients
    return coefficients[-1], left @ left, inverse[-1]


lines = [np.array(line.split(), dtype=float) for line in open(sys.argv[1])]
for x, z, scatter, shape in zip(*[lines[i::4] for i in range(4)]):
    t = (x - x.min()) / (x.max() - x.min()) * 2 - 1
    stations = np.unique(x)[2:-2]
    knees = np.unique(np.concatenate([stations[:-1] + (stations[1:] - stations[:-1]) * k / 4 for k in range(4)] + [stations[-1:]]))
    statistics = []
    for knee in knees:
        angle, squares, row = fit(x, t, z, scatter, knee)
        scale = max(0.5, np.sqrt(squares / (len(x) - DEGREE - 3)))
        statistics.append(abs(angle) / np.sqrt(scale**2 * (row @ row) + (row @ (shape / scatter)) ** 2))
    best = min(((fit(x, t, z, scatter, knee)[1], knee) for knee in stations))
    for low, high in zip(stations[:-1], stations[1:]):
        found = minimize_scalar(lambda knee: fit(x, t, z, scatter, knee)[1], bounds=(low, high), method="bounded", options={"xatol": 1e-9})
        best = min(best, (found.fun, found.x))
    print(repr(float(max(statistics))), repr(float(best[1])), repr(float(1000 * fit(x, t, z, scatter, best[1])[0])))
