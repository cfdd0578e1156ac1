"""Writes test/reference/distributions.csv: probabilities and quantiles to 17 digits, with mpmath at 40 digits.

Run: python3 test/reference/generators/distributions.py > test/reference/distributions.csv
"""

import mpmath as mp

mp.mp.dps = 40


def t_tail(t, v):  # P(T > t), t > 0
    v, t = mp.mpf(v), mp.mpf(t)
    return mp.betainc(v / 2, mp.mpf(1) / 2, 0, v / (v + t * t), regularized=True) / 2


def chi_upper(x, v):
    return mp.gammainc(mp.mpf(v) / 2, mp.mpf(x) / 2, mp.inf, regularized=True)


def f_upper(x, a, b):
    a, b, x = mp.mpf(a), mp.mpf(b), mp.mpf(x)
    return mp.betainc(b / 2, a / 2, 0, b / (a * x + b), regularized=True)


print(f"# Upper-tail probabilities and quantiles computed with mpmath {mp.__version__} at 40 digits")
print("# by test/reference/generators/distributions.py: regularised incomplete beta and gamma functions, erfc")
print("# tail rows: value = P(X > x); quantile rows: x = p, value = quantile, found by root search at 40 digits")
print("function,x,dof1,dof2,value")
for z in [0.1, 1, 1.96, 3, 5, 8, 20, 37]:
    print(f"normalTail,{z},,,{mp.nstr(mp.erfc(mp.mpf(z) / mp.sqrt(2)) / 2, 17)}")
for v in [1, 2.5, 5, 16.75, 100, 12345, 1000000]:
    for t in [0.01, 1, 2.5, 6, 40]:
        print(f"studentTTail,{t},{v},,{mp.nstr(t_tail(t, v), 17)}")
for v in [1, 2, 5, 34, 1000]:
    for ratio in [0.01, 0.5, 1, 2, 10]:
        print(f"chiSquareTail,{v * ratio},{v},,{mp.nstr(chi_upper(v * ratio, v), 17)}")
for a, b in [(1, 1), (2, 7), (5, 10), (30, 4), (100, 500)]:
    for x in [0.05, 1, 3, 30]:
        print(f"fTail,{x},{a},{b},{mp.nstr(f_upper(x, a, b), 17)}")
for p in ["0.975", "0.995", "0.6"]:
    for v in [1, 3, 16.75, 12345, 1000000]:
        target = 1 - mp.mpf(float(p))
        root = mp.findroot(lambda t: t_tail(t, v) - target, mp.mpf(2) if p != "0.6" else mp.mpf("0.26"))
        print(f"studentTQuantile,{p},{v},,{mp.nstr(root, 17)}")
for p in ["0.975", "0.6", "0.0001", "1e-300"]:
    target = mp.mpf(float(p))
    root = mp.findroot(lambda z: mp.log(mp.erfc(-z / mp.sqrt(2)) / 2) - mp.log(target), -mp.sqrt(-2 * mp.log(target)) if target < 0.5 else mp.mpf(1))
    print(f"normalQuantile,{p},,,{mp.nstr(root, 17)}")
