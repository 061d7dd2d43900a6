"""Rails screwed to a base, by another route: beam finite elements and a bounded least-squares problem, for each six lines of a file.

Lines: nodes (mm); free rail (um); base (um); indices of the screws; bending stiffness of the rail; of the base (N m2; inf for a rigid one).
Cubic Hermite elements with heights and rotations as unknowns, no spline; two Gauss points make the energy of an element exact. Unknown is also the gap
y >= 0 at each node that is no screw (0 at screws). Least energy 1/2 |B1 (z - f)|^2 + 1/2 |B2 (b - g)|^2 with z = b + y, by SciPy's lsq_linear (BVLS).
Prints the mounted heights over the line through the outer screws, then what each node pulls with (N), on one line.
"""
import sys

import numpy as np
from scipy.optimize import lsq_linear


def energy_rows(x, ei):
    """Rows whose squares add up to the energy, N um: columns for heights in um, then for rotations in um per unit of the mean element."""
    n, unit = len(x), np.diff(x).mean()
    heights, rotations = np.zeros((2 * (n - 1), n)), np.zeros((2 * (n - 1), n))
    for i, h in enumerate(np.diff(x)):
        for j, s in enumerate((0.5 - 0.5 / np.sqrt(3), 0.5 + 0.5 / np.sqrt(3))):
            root = np.sqrt(1000 * ei * h / 2)
            heights[2 * i + j, i : i + 2] = root / h**2 * np.array([12 * s - 6, 6 - 12 * s])
            rotations[2 * i + j, i : i + 2] = root / h * np.array([6 * s - 4, 6 * s - 2]) / unit
    return heights, rotations


lines = [line.split() for line in open(sys.argv[1])]
for x, f, g, screws, ei, eb in zip(*[lines[i::6] for i in range(6)]):
    x, f, g = (np.array(v, float) for v in (x, f, g))
    screws, ei, eb = np.array(screws, int), float(ei[0]), float(eb[0])
    n = len(x)
    ends = screws[[0, -1]]
    level = lambda s: s - s[ends[0]] - (s[ends[1]] - s[ends[0]]) * (x - x[ends[0]]) / (x[ends[1]] - x[ends[0]])
    f, g = level(f), level(g)
    gaps = np.setdiff1d(np.arange(n), screws)
    h1, r1 = energy_rows(x, ei)
    if np.isinf(eb):
        a, b = np.hstack([h1[:, gaps], r1]), h1 @ (f - g)
    else:
        # Base heights b but those at the outer screws, gaps, rotations of both.
        h2, r2 = energy_rows(x, eb)
        moving = np.delete(np.arange(n), ends)
        a = np.block([[h1[:, gaps], h1[:, moving], r1, np.zeros_like(r2)], [np.zeros((len(h2), len(gaps))), h2[:, moving], np.zeros_like(r1), r2]])
        b = np.concatenate([h1 @ f, h2 @ g])
    low = np.full(a.shape[1], -np.inf)
    low[: len(gaps)] = 0
    scale = np.linalg.norm(a, axis=0)
    found = lsq_linear(a / scale, b, (low, np.inf), method="bvls", tol=1e-15, max_iter=5000)
    unknown = found.x / scale
    z = g.copy()
    if not np.isinf(eb):
        z = np.zeros(n)
        z[moving] = unknown[len(gaps) : len(gaps) + len(moving)]
    z[gaps] += unknown[: len(gaps)]
    # Nodal forces on the rail: gradient of its energy once its rotations are at rest.
    rotations = np.linalg.lstsq(r1, -h1 @ (z - f), rcond=None)[0]
    pulls = -(h1.T @ (h1 @ (z - f) + r1 @ rotations))
    print(*[repr(float(v)) for v in np.concatenate([z, pulls])])
