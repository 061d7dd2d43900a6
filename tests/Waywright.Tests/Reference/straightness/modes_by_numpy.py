"""Amplitudes of shape modes by another route, for each four lines of a file: positions, heights, scatter of each station, one error shape.

The coefficient of an orthogonal polynomial of degree k is the highest coefficient of the least-squares polynomial of degree k; NumPy finds it by a singular
value decomposition. It is scaled by the greatest height of Legendre's polynomial over the line through its ends, found on a fine grid.
Prints the amplitudes of orders 2 to 6, then their covariance matrix, row after row, on one line.
"""
import sys

import numpy as np
from numpy.polynomial import legendre

grid = np.linspace(-1, 1, 2_000_001)
scale = {}
for k in range(2, 7):
    series = np.eye(k + 1)[k]
    ends = 1 if k % 2 == 0 else grid
    scale[k] = (-1) ** (k + 1) * np.abs(legendre.legval(grid, series) - ends).max() / legendre.leg2poly(series)[-1]

lines = [np.array(line.split(), dtype=float) for line in open(sys.argv[1])]
for x, z, scatter, shape in zip(*[lines[i::4] for i in range(4)]):
    t = (x - x.min()) / (x.max() - x.min()) * 2 - 1
    rows = np.array([scale[k] * np.linalg.pinv(np.vander(t, k + 1, increasing=True), rcond=1e-15)[-1] for k in range(2, 7)])
    covariance = rows @ (np.diag(scatter**2) + np.outer(shape, shape)) @ rows.T
    print(*[repr(float(v)) for v in np.concatenate([rows @ z, covariance.ravel()])])
