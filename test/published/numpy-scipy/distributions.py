"""Prints reference values of fitted distributions, by scipy and a root finder."""
import numpy as np
from scipy import optimize, stats

x = np.array([2.1, 3.4, 5.6, 4.8, 6.1, 7.3, 8.9, 3.2, 5.0, 6.6, 4.1, 9.4])
k = optimize.brentq(lambda k: (x**k * np.log(x)).sum() / (x**k).sum() - 1 / k - np.log(x).mean(), 0.5, 20, xtol=1e-15)
c = ((x**k).mean()) ** (1 / k)


def nll(p):
    return -stats.weibull_min.logpdf(x, p[0], scale=p[1]).sum()


def hessian(f, p):
    h = [1e-4 * v for v in p]
    out = np.zeros((2, 2))
    for i in range(2):
        for j in range(2):
            def at(a, b):
                q = list(p)
                q[i] += a * h[i]
                q[j] += b * h[j]
                return f(q)
            out[i, j] = (at(1, 1) - at(1, -1) - at(-1, 1) + at(-1, -1)) / (4 * h[i] * h[j])
    return out


se = np.sqrt(np.diag(np.linalg.inv(hessian(nll, [k, c]))))
print("weibull", f"{k:.10f} {c:.10f} logL {-nll([k, c]):.9f} se {se[0]:.6f} {se[1]:.6f}")

top = np.array([21.4, 24.1, 19.8, 26.7, 22.3, 23.9, 20.5, 28.2, 22.8, 25.0, 21.1, 23.3])
loc, scale = stats.gumbel_r.fit(top)
g = optimize.brentq(lambda b: b - top.mean() + (top * np.exp(-top / b)).sum() / np.exp(-top / b).sum(), 0.2, 20, xtol=1e-15)
m = -g * np.log(np.exp(-top / g).mean())
print("gumbel", f"{m:.9f} {g:.9f} scipy {loc:.5f} {scale:.5f}")
for years in (10, 25, 48):
    print(years, f"{stats.gumbel_r.ppf(1 - 1 / years, m, g):.9f}")
