"""Support points of a uniform bar in exact rational arithmetic: python3 support_points_exact.py > support_points_exact.csv

L = w = EI = 1; b is the distance between the supports, c = (1 - b)/2 each overhang. A line is a list of coefficients of powers of x, lowest first; each
coefficient is a list of coefficients of powers of b.
"""
from fractions import Fraction as F


def add(p, q):
    return [(p[i] if i < len(p) else 0) + (q[i] if i < len(q) else 0) for i in range(max(len(p), len(q)))]


def times(p, q):
    product = [F(0)] * (len(p) + len(q) - 1)
    for i, a in enumerate(p):
        for j, b in enumerate(q):
            product[i + j] += a * b
    return product


def scaled(p, k):
    return [a * k for a in p]


def line_times(p, q):
    product = [[F(0)] for _ in range(len(p) + len(q) - 1)]
    for i, a in enumerate(p):
        for j, b in enumerate(q):
            product[i + j] = add(product[i + j], times(a, b))
    return product


def slope(line):
    return [scaled(a, i) for i, a in enumerate(line)][1:]


def integral(line, upto):
    total, power = [F(0)], upto
    for i, a in enumerate(line):
        total, power = add(total, scaled(times(a, power), F(1, i + 1))), times(power, upto)
    return total


def value(p, x):
    return sum(a * x**i for i, a in enumerate(p))


def root(p):
    low, high = F(51, 100), F(58, 100)
    for _ in range(70):
        middle = (low + high) / 2
        low, high = (middle, high) if (value(p, middle) > 0) == (value(p, low) > 0) else (low, middle)
    return float(low)


def least(p):
    return root([i * a for i, a in enumerate(p)][1:])


b, c = [F(0), F(1)], [F(1, 2), F(-1, 2)]
c2, b2 = times(c, c), times(b, b)
# Outwards from a support, a cantilever that leaves it with the slope s = c^2 b/4 - b^3/24.
s = add(scaled(times(c2, b), F(1, 4)), scaled(times(b2, b), F(-1, 24)))
overhang = [[F(0)], s, scaled(c2, F(1, 4)), scaled(c, F(-1, 6)), [F(1, 24)]]
# Between the supports t u (b^2 + t u)/24 - c^2 t u/4, with t u = b t - t^2.
t_u = [[F(0)], b, [F(-1)]]
span = line_times(t_u, [add(scaled(b2, F(1, 24)), scaled(c2, F(-1, 4))), scaled(b, F(1, 24)), [F(-1, 24)]])


def whole(of_overhang, of_span):
    return scaled(add(integral(of_overhang, c), integral(of_span, scaled(b, F(1, 2)))), 2)


mean, square = whole(overhang, span), whole(line_times(overhang, overhang), line_times(span, span))
shortening = whole(line_times(slope(overhang), slope(overhang)), line_times(slope(span), slope(span)))
centre = add(scaled(times(b2, b2), F(5, 384)), scaled(times(b2, c2), F(-24, 384)))
end = scaled(times(c, add(add(scaled(times(c2, c), 3), scaled(times(c2, b), 6)), scaled(times(b2, b), -1))), F(1, 24))

print("point,spacing,condition")
print(f"bessel,{least(shortening):.16f},integral of slope squared over the bar is least")
print(f"min_sag_centre_equals_ends,{root(add(centre, scaled(end, -1))):.16f},centre and ends sag alike")
print(f"min_rms,{least(add(square, scaled(times(mean, mean), -1))):.16f},variance of the line over the bar is least")
print(f"zero_central_sag,{root(centre):.16f},the centre lies level with the supports")
