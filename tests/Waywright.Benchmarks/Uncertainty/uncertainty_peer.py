"""95 % point of the straightness about least squares of simulated errors by NumPy; the file holds stations and trials."""
import sys
import time
import numpy as np

stations, trials = (int(v) for v in open(sys.argv[1]).read().split())
x = np.arange(stations) - (stations - 1) / 2
across = x / (x @ x)
random = np.random.default_rng(1)


def plain():
    z = random.standard_normal((trials, stations))
    residual = z - z.mean(axis=1, keepdims=True) - np.outer(z @ across, x)
    return np.quantile(residual.max(axis=1) - residual.min(axis=1), 0.95)


def transposed():
    z = random.standard_normal((stations, trials))
    residual = z - z.mean(axis=0) - np.outer(x, across @ z)
    return np.quantile(residual.max(axis=0) - residual.min(axis=0), 0.95)


routes = {"plain": plain, "transposed": transposed}
for line in sys.stdin:
    verb, *rest = line.split()
    if verb == "versions":
        print(f"Python {sys.version.split()[0]}, NumPy {np.__version__}", flush=True)
    elif verb == "answer":
        print(repr(float(np.mean([routes[rest[0]]() for _ in range(5)]))), flush=True)
    elif verb == "run":
        route, count = routes[rest[0]], int(rest[1])
        start = time.perf_counter()
        for _ in range(count):
            route()
        print(repr(time.perf_counter() - start), flush=True)
