"""The pulley end, by finite elements with contact: a tensioned beam lies over two cylinders (parabolas of the same curvature, small slopes) whose tops are a
distance L apart; where it touches is found by an active set, then it swings about that shape. Prints xi, the lowest note over that of the ideal string of length L, how far
back of the cylinder's top the belt leaves it, in units of sqrt(EI / T), and the element length, which is how finely that place is resolved.
Hermite beam elements with geometric stiffness (any finite-element text); NumPy and SciPy only."""
import numpy as np
from scipy.linalg import eigh, solve


def element(EI, T, mu, h):
    k = EI / h**3 * np.array([[12, 6*h, -12, 6*h], [6*h, 4*h*h, -6*h, 2*h*h], [-12, -6*h, 12, -6*h], [6*h, 2*h*h, -6*h, 4*h*h]])
    g = T / (30*h) * np.array([[36, 3*h, -36, 3*h], [3*h, 4*h*h, -3*h, -h*h], [-36, -3*h, 36, -3*h], [3*h, -h*h, -3*h, 4*h*h]])
    m = mu*h/420 * np.array([[156, 22*h, 54, -13*h], [22*h, 4*h*h, 13*h, -3*h*h], [54, 13*h, 156, -22*h], [-13*h, -3*h*h, -22*h, 4*h*h]])
    return k + g, m


def note(xi, elements):
    L, T, mu, R = 1.0, 1.0, 1.0, 5.0
    EI = (L / xi)**2 * T
    lam = np.sqrt(EI / T)
    reach = 4 * lam                     # of each cylinder that is modelled
    h = (L + 2*reach) / elements
    x = np.linspace(-reach, L + reach, elements + 1)
    n = len(x)
    K, M = np.zeros((2*n, 2*n)), np.zeros((2*n, 2*n))
    k, m = element(EI, T, mu, h)
    for e in range(elements):
        s = slice(2*e, 2*e + 4)
        K[s, s] += k
        M[s, s] += m
    ground = np.where(x < 0, -x*x/(2*R), np.where(x > L, -(x - L)**2/(2*R), -np.inf))
    over = np.isfinite(ground)
    # Both ends lie on their cylinders for good, with its slope.
    fixed = {0: ground[0], 2*n - 2: ground[-1], 1: reach/R, 2*n - 1: -reach/R}
    active = set(np.flatnonzero(over)) - {0, n - 1}
    for _ in range(300):
        held = dict(fixed)
        held.update({2*i: ground[i] for i in active})
        dofs = np.array(sorted(held))
        free = np.setdiff1d(np.arange(2*n), dofs)
        w = np.zeros(2*n)
        w[dofs] = [held[d] for d in dofs]
        w[free] = solve(K[np.ix_(free, free)], -K[np.ix_(free, dofs)] @ w[dofs], assume_a='pos')
        force = K @ w
        off = {i for i in active if force[2*i] < -1e-9}
        on = {i for i in range(1, n - 1) if over[i] and i not in active and w[2*i] < ground[i] - 1e-13}
        if not off and not on:
            break
        # One node at a time from the rim inwards: the contact is one piece on each cylinder.
        if on:
            active |= on
        else:
            left = [i for i in off if x[i] < L/2]
            right = [i for i in off if x[i] > L/2]
            if left:
                active.discard(max(left))
            if right:
                active.discard(min(right))
    values = eigh(K[np.ix_(free, free)], M[np.ix_(free, free)], eigvals_only=True, subset_by_index=[0, 0])
    rim = (min(i for i in range(n) if x[i] > L/2 and (i in active)), max(i for i in range(n) if x[i] < L/2 and (i in active)))
    return np.sqrt(values[0]) / np.pi, -x[rim[1]] / lam, h


for xi in (20, 50):
    f, back, h = note(xi, 400)
    print(f"{xi},{f:.6f},{back:.3f},{h:.6f}")
