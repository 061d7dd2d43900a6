"""Notes of a tensioned beam by Hermite finite elements, for pinned and clamped ends. Reads lines 'n,xi,clamped ends' and prints f_n / (n f_0) for each."""
import sys
import numpy as np
from scipy.linalg import eigh


def ratio(n, xi, clamped, elements=160):
    h = 1.0 / elements
    EI, T = 1.0 / xi**2, 1.0
    k = EI / h**3 * np.array([[12, 6*h, -12, 6*h], [6*h, 4*h*h, -6*h, 2*h*h], [-12, -6*h, 12, -6*h], [6*h, 2*h*h, -6*h, 4*h*h]])
    g = T / (30*h) * np.array([[36, 3*h, -36, 3*h], [3*h, 4*h*h, -3*h, -h*h], [-36, -3*h, 36, -3*h], [3*h, -h*h, -3*h, 4*h*h]])
    m = h/420 * np.array([[156, 22*h, 54, -13*h], [22*h, 4*h*h, 13*h, -3*h*h], [54, 13*h, 156, -22*h], [-13*h, -3*h*h, -22*h, 4*h*h]])
    size = 2*(elements + 1)
    K, M = np.zeros((size, size)), np.zeros((size, size))
    for e in range(elements):
        s = slice(2*e, 2*e + 4)
        K[s, s] += k + g
        M[s, s] += m
    held = [0, size - 2] + ([1] if clamped > 0 else []) + ([size - 1] if clamped > 1 else [])
    free = np.setdiff1d(np.arange(size), held)
    values = eigh(K[np.ix_(free, free)], M[np.ix_(free, free)], eigvals_only=True, subset_by_index=[n - 1, n - 1])
    return np.sqrt(values[0]) / (np.pi * n)


for line in open(sys.argv[1]):
    n, xi, clamped = line.split(',')
    print(f"{ratio(int(n), float(xi), int(clamped)):.10f}")
