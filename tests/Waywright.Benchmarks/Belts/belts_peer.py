"""Clamped notes of a tensioned beam by SciPy's bracketing root finder, over the cases in a file: n, xi a line. Pure Python functions of the math module, which are its fastest for single numbers."""
import math
import sys
import time

import numpy as np
import scipy
from scipy.optimize import brentq

cases = [(int(n), float(xi)) for n, xi in (line.split(",") for line in open(sys.argv[1]))]


def ratio(n, xi):
    def rest(b):
        a = math.hypot(xi, b)
        t = math.tanh(a / 2)
        # The half equation of this note, without poles: symmetric for odd n, antisymmetric for even.
        return a * t * math.cos(b / 2) + b * math.sin(b / 2) if n % 2 else a * math.sin(b / 2) - b * t * math.cos(b / 2)

    b = brentq(rest, n * math.pi, (n + 1) * math.pi, xtol=1e-12, rtol=1e-14)
    return math.hypot(xi, b) * b / (xi * n * math.pi)


for line in sys.stdin:
    verb, *rest = line.split()
    if verb == "versions":
        print(f"Python {sys.version.split()[0]}, NumPy {np.__version__}, SciPy {scipy.__version__}", flush=True)
    elif verb == "answer":
        print(repr(sum(ratio(n, xi) for n, xi in cases)), flush=True)
    elif verb == "run":
        start = time.perf_counter()
        for k in range(int(rest[1])):
            ratio(*cases[k % len(cases)])
        print(repr(time.perf_counter() - start), flush=True)
