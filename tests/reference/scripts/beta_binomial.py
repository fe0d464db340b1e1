"""Beta-binomial reference values in exact rational arithmetic; roots and logarithms with mpmath, 50 digits.

python3 beta_binomial.py OUT writes OUT/06c_beta_binomial.json. The chance of k of n at share p and correlation rho
(1 / (alpha + beta + 1)) is a polynomial in p; with p uniform and rho on a grid of stated weights every integral is one
of a polynomial.
"""
import json
import sys
from fractions import Fraction as F
from math import comb

from mpmath import log, mp, mpf

mp.dps = 50


def times(a, b):
    out = [F(0)] * (len(a) + len(b) - 1)
    for i, x in enumerate(a):
        for j, y in enumerate(b):
            out[i + j] += x * y
    return out


def integral(a):
    return [F(0)] + [c / (i + 1) for i, c in enumerate(a)]


def value(a, p):
    total = F(0) if isinstance(p, F) else mpf(0)
    for c in reversed(a):
        total = total * p + (c if isinstance(p, F) else mpf(c.numerator) / c.denominator)
    return total


def chance(k, n, rho):
    g = rho / (1 - rho)
    out = [F(comb(n, k))]
    for i in range(k):
        out = times(out, [i * g, F(1)])
    for i in range(n - k):
        out = times(out, [1 + i * g, F(-1)])
    bottom = F(1)
    for i in range(n):
        bottom *= 1 + i * g
    return [c / bottom for c in out]


def likelihood(groups, rho):
    out = [F(1)]
    for k, n in groups:
        out = times(out, chance(k, n, rho))
    return out


def whole(a):
    return value(integral(a), F(1))


def add(a, b, weight):
    size = max(len(a), len(b))
    a = a + [F(0)] * (size - len(a))
    b = b + [F(0)] * (size - len(b))
    return [x + weight * y for x, y in zip(a, b)]


def real(x):
    return mpf(x.numerator) / x.denominator if isinstance(x, F) else mpf(x)


def quantile(cdf, p):
    low, high = mpf(0), mpf(1)
    for _ in range(120):
        middle = (low + high) / 2
        low, high = (middle, high) if value(cdf, middle) < p else (low, middle)
    return low


def summary(density):
    cdf = integral(density)
    mean = value(integral([F(0)] + density), F(1))
    out = {"mean": float(mean)}
    for share in ("0.8", "0.95"):
        tail = (1 - mpf(share)) / 2
        out["equal_tail_" + share] = [float(quantile(cdf, tail)), float(quantile(cdf, 1 - tail))]
        width = lambda t: quantile(cdf, t + mpf(share)) - quantile(cdf, t)
        low, high = mpf(0), 1 - mpf(share)
        for _ in range(80):
            a, b = low + (high - low) / 3, high - (high - low) / 3
            low, high = (low, b) if width(a) < width(b) else (a, high)
        out["shortest_" + share] = [float(quantile(cdf, low)), float(quantile(cdf, min(low + mpf(share), 1)))]
    return out


def share_case(name, groups, rhos, weights):
    mixed, by_rho = [F(0)], []
    for rho, weight in zip(rhos, weights):
        one = likelihood(groups, rho)
        by_rho.append(weight * whole(one))
        mixed = add(mixed, one, weight)
    total = whole(mixed)
    expected = summary([c / total for c in mixed])
    expected["log_evidence"] = float(log(real(total)))
    expected["correlation_mean"] = float(sum(r * w for r, w in zip(rhos, by_rho)) / total)
    return case(name, "share of groups, uniform in p, rho on a grid", groups, rhos, weights, expected, {"abs": 2e-5, "log_abs": 5e-5})


def step_case(name, groups, rhos, weights):
    n = len(groups)
    constant = sum(w * whole(likelihood(groups, r)) for r, w in zip(rhos, weights))
    by_place, higher, after, flat = {}, F(0), [F(0)], [F(0)]
    for rho, weight in zip(rhos, weights):
        flat = add(flat, likelihood(groups, rho), weight)
        for c in range(2, n - 1):
            a, b = likelihood(groups[:c], rho), likelihood(groups[c:], rho)
            by_place[c] = by_place.get(c, F(0)) + weight * whole(a) * whole(b)
            higher += weight * whole(times(integral(a), b))
            after = add(after, b, weight * whole(a))
    stepped = sum(by_place.values())
    bayes = stepped / (n - 3) / constant
    chance_of_step = bayes / (bayes + 1)
    latest = add([c / stepped * chance_of_step for c in after], [c / constant for c in flat], 1 - chance_of_step)
    expected = {
        "log_bayes_factor": float(log(real(bayes))),
        "places": {str(c): float(v / stepped) for c, v in by_place.items()},
        "higher_after": float(higher / stepped),
        "after": summary([c / stepped for c in after]),
        "latest_even_odds": summary(latest),
    }
    return case(name, "one step in the share, places 2 to n - 2", groups, rhos, weights, expected, {"abs": 2e-5, "log_abs": 5e-5})


def case(name, method, groups, rhos, weights, expected, tolerance):
    return {
        "id": name,
        "method": method,
        "source": {"name": "exact rational arithmetic, mpmath", "call": "scripts/beta_binomial.py"},
        "input": {"groups": groups, "rho": [float(r) for r in rhos], "weight": [float(w) for w in weights]},
        "expected": expected,
        "tolerance": tolerance,
        "provenance": "oracle",
    }


def chance_case(name, n, p, rho):
    return {
        "id": name,
        "method": "beta-binomial chances of 0 to n",
        "source": {"name": "exact rational arithmetic", "call": "scripts/beta_binomial.py"},
        "input": {"n": n, "p": float(p), "rho": float(rho)},
        "expected": [float(value(chance(k, n, rho), p)) for k in range(n + 1)],
        "tolerance": {"rel": 1e-12},
        "provenance": "oracle",
    }


GRID = ([F(0), F(1, 10), F(1, 4)], [F(1, 2), F(1, 4), F(1, 4)])
CASES = [
    chance_case("bb_chance_10_0.3_0.1", 10, F(3, 10), F(1, 10)),
    chance_case("bb_chance_10_0.3_0", 10, F(3, 10), F(0)),
    chance_case("bb_chance_25_0.02_0.6", 25, F(1, 50), F(3, 5)),
    share_case("bb_share_even", [[3, 5], [2, 5], [4, 5], [3, 5], [5, 5], [1, 5]], *GRID),
    share_case("bb_share_none", [[0, 4], [0, 5], [0, 3]], *GRID),
    share_case("bb_share_far", [[9, 10], [2, 10], [10, 10], [8, 10]], *GRID),
    step_case("bb_step_up", [[1, 5], [0, 4], [2, 5], [4, 5], [5, 5], [3, 4], [5, 5]], *GRID),
    step_case("bb_step_none", [[3, 5], [2, 4], [2, 5], [4, 5], [2, 5], [3, 4]], *GRID),
]

with open(sys.argv[1] + "/06c_beta_binomial.json", "w") as out:
    json.dump({"group": "beta-binomial", "about": "shares of groups of trials", "cases": CASES}, out, indent=1)
    out.write("\n")
