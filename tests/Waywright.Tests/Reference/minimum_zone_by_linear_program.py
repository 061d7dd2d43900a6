"""The width of the minimum zone by SciPy's linear program (HiGHS), for each pair of lines in a file: positions, then heights.

Unknowns: slope b, upper intercept u, lower intercept l; u - l smallest with l <= z - b x <= u. The solver's tolerances are absolute, so positions
are brought to -1..1, a line is taken off and heights are brought to 0..1 first; the width is scaled back.
"""
import sys

import numpy as np
from scipy.optimize import linprog

lines = [np.array(line.split(), dtype=float) for line in open(sys.argv[1])]
tight = {"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10}
for x, z in zip(lines[::2], lines[1::2]):
    x = (x - x.min()) / (x.max() - x.min()) * 2 - 1
    z = z - z.mean()
    z = z - (x - x.mean()) * ((x - x.mean()) @ z / ((x - x.mean()) @ (x - x.mean())))
    scale = z.max() - z.min()
    if scale < 1e-9:
        print(repr(float(scale)))
        continue
    z = z / scale
    ones, none = np.ones_like(x), np.zeros_like(x)
    above = np.column_stack([-x, -ones, none])
    below = np.column_stack([x, none, ones])
    found = linprog([0, 1, -1], A_ub=np.vstack([above, below]), b_ub=np.concatenate([-z, z]), bounds=[(None, None)] * 3, method="highs", options=tight)
    if not found.success:
        sys.exit(found.message)
    print(repr(float(found.fun * scale)))
