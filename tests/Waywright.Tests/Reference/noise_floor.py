# Straightness of nothing but unit noise, by NumPy and SciPy: stations, then mean and 95 % point of the range about least squares, about the end points,
# and of the narrowest zone over the sloped edges of the convex hull. argv[1]: a file with one number of stations a line.
import sys
import numpy as np
from scipy.spatial import ConvexHull

random = np.random.default_rng(20261125)
for line in open(sys.argv[1]):
    n = int(line)
    x = np.arange(n) - (n - 1) / 2
    z = random.standard_normal((20000, n))
    residual = z - z.mean(1, keepdims=True) - np.outer(z @ x / (x @ x), x)
    least = np.ptp(residual, axis=1)
    ends = z - z[:, :1] - np.outer((z[:, -1] - z[:, 0]) / (n - 1), np.arange(n))
    ends = np.ptp(ends, axis=1)
    zone = []
    for heights in z[:6000]:
        hull = ConvexHull(np.column_stack([x, heights]))
        edges = hull.simplices
        run = x[edges[:, 1]] - x[edges[:, 0]]
        slopes = ((heights[edges[:, 1]] - heights[edges[:, 0]])[run != 0]) / run[run != 0]
        flat = heights[None, hull.vertices] - slopes[:, None] * x[None, hull.vertices]
        zone.append(np.ptp(flat, axis=1).min())
    zone = np.array(zone)
    print(n, *(f(v) for v in (least, ends, zone) for f in (np.mean, lambda a: np.quantile(a, 0.95))))
