"""Minimum zone by SciPy, two ways, over the profiles in a file: one position per column, then one profile per row."""
import sys
import time

import numpy as np
import scipy
from scipy.optimize import linprog
from scipy.spatial import ConvexHull

rows = np.loadtxt(sys.argv[1], delimiter=",")
x = rows[0]
profiles = rows[1:]
points = [np.column_stack([x, z]) for z in profiles]
ones = np.ones_like(x)
# Unknowns: slope b, upper intercept u, lower intercept l; u - l smallest, z <= u + b x, z >= l + b x.
above = np.column_stack([-x, -ones, 0 * ones])
below = np.column_stack([x, 0 * ones, ones])
constraints = np.vstack([above, below])
bounds = [np.concatenate([-z, z]) for z in profiles]
cost = np.array([0.0, 1.0, -1.0])
free = [(None, None)] * 3


def qhull(i):
    p = points[i]
    hull = ConvexHull(p)
    ends = p[hull.simplices]
    run = ends[:, 1, 0] - ends[:, 0, 0]
    sloped = run != 0
    slopes = (ends[sloped, 1, 1] - ends[sloped, 0, 1]) / run[sloped]
    corners = p[hull.vertices]
    heights = corners[:, 1, None] - corners[:, 0, None] * slopes
    return (heights.max(axis=0) - heights.min(axis=0)).min()


def highs(i):
    return linprog(cost, A_ub=constraints, b_ub=bounds[i], bounds=free, method="highs").fun


routes = {"qhull": qhull, "highs": highs}
for line in sys.stdin:
    verb, *rest = line.split()
    if verb == "versions":
        print(f"Python {sys.version.split()[0]}, NumPy {np.__version__}, SciPy {scipy.__version__}", flush=True)
    elif verb == "answer":
        print(repr(float(sum(routes[rest[0]](i) for i in range(len(profiles))))), flush=True)
    elif verb == "run":
        route, count = routes[rest[0]], int(rest[1])
        start = time.perf_counter()
        for k in range(count):
            route(k % len(profiles))
        print(repr(time.perf_counter() - start), flush=True)
