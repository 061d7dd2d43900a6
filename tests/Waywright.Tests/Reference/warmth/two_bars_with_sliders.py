# Two bars that bend alike, screws as sliders between their joint faces, by finite elements: bars for growth, Hermite beams for bending, the sliders' forces by bounded least squares
# (SciPy, BVLS) at each of many small steps of temperature, up and back again. Written apart from the library: unknowns are the places of both bars, not forces and moments.
# argv[1]: lines of numbers: L mm, elements, held 0/1, friction N, strain per K, K, E1 A1 I1 e1, E2 A2 I2 e2 (MPa, mm), then the screws (mm, on nodes).
# Prints for each: heights of the nodes above the chord when warm (um), heights when back (um), moments of both ends when warm (N mm).
import sys
import numpy as np
from scipy.optimize import lsq_linear

UP, DOWN = 8, 32


def run(length, n, held, grip, strain, kelvin, e1, a1, i1, d1, e2, a2, i2, d2, screws):
    h = length / n
    ei = e1 * i1 + e2 * i2
    stiff = np.zeros((4 * n + 4, 4 * n + 4))
    warm = np.zeros(4 * n + 4)
    for i in range(n):
        for bar, ea, grows in ((0, e1 * a1, 0.0), (1, e2 * a2, strain)):
            at = [4 * i + bar, 4 * i + 4 + bar]
            stiff[np.ix_(at, at)] += ea / h * np.array([[1, -1], [-1, 1]])
            warm[at] += ea * grows * np.array([-1, 1])
        at = [4 * i + 2, 4 * i + 3, 4 * i + 6, 4 * i + 7]
        stiff[np.ix_(at, at)] += ei / h**3 * np.array([[12, 6 * h, -12, 6 * h], [6 * h, 4 * h * h, -6 * h, 2 * h * h], [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h * h, -6 * h, 4 * h * h]])
    fixed = [2, 4 * n + 2, 4 * (n // 2) + 1] + ([3, 4 * n + 3] if held else [])
    stiff[4 * (n // 2), 4 * (n // 2)] += 1e-6 * e1 * a1 / length  # keeps the rail from running away
    free = np.setdiff1d(np.arange(4 * n + 4), fixed)
    slip = np.zeros((len(screws), 4 * n + 4))
    for j, place in enumerate(screws):
        i = int(round(place / h))
        assert abs(i * h - place) < 1e-9
        slip[j, [4 * i, 4 * i + 1, 4 * i + 3]] = 1, -1, d1 + d2
    inverse = np.linalg.inv(stiff[np.ix_(free, free)])
    slip = slip[:, free]
    gives = slip @ inverse @ slip.T
    root = np.linalg.cholesky((gives + gives.T) / 2)
    grown = slip @ inverse @ warm[free]
    slid, places = np.zeros(len(screws)), []
    for t in [kelvin * (k + 1) / UP for k in range(UP)] + [kelvin * (1 - (k + 1) / DOWN) for k in range(DOWN)]:
        force = lsq_linear(root.T, np.linalg.solve(root, grown * t - slid), (-grip, grip), tol=1e-13, max_iter=1000, method='bvls').x
        slid = grown * t - gives @ force
        u = np.zeros(4 * n + 4)
        u[free] = inverse @ (warm[free] * t - slip.T @ force)
        places.append(u)
    u = places[UP - 1]
    v, r = u[2::4], u[3::4]
    first = -ei * (-6 * v[0] / h**2 - 4 * r[0] / h + 6 * v[1] / h**2 - 2 * r[1] / h)
    last = -ei * (6 * v[-2] / h**2 + 2 * r[-2] / h - 6 * v[-1] / h**2 + 4 * r[-1] / h)
    return np.concatenate([1000 * v, 1000 * places[-1][2::4], [first, last]])


for line in open(sys.argv[1]):
    x = [float(f) for f in line.split()]
    print(*run(x[0], int(x[1]), x[2] > 0, *x[3:14], x[14:]))
