"""The beta distribution, with the standard library alone: what is known about a rate after a count.

With a uniform prior, `k` successes in `n` opportunities leave a Beta(k + 1, n - k + 1). Its
distribution function is the regularized incomplete beta function, here by its continued fraction
(Abramowitz and Stegun 1964, 26.5.8), evaluated by Lentz's method (Lentz 1976).
"""

from __future__ import annotations

import math
from functools import lru_cache

_TINY = 1e-300
_CLOSE = 1e-15
_MOST_STEPS = 10_000


def cdf(x: float, a: float, b: float) -> float:
    """The probability that a Beta(a, b) is at most `x`; `a` and `b` above 0."""
    if a <= 0 or b <= 0:
        raise ValueError("a beta distribution needs two numbers above 0")
    if x <= 0:
        return 0.0
    if x >= 1:
        return 1.0
    log_front = (
        math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log1p(-x)
    )
    # The fraction is quick on the side of the mean where x is small; the other side mirrors it.
    if x < (a + 1) / (a + b + 2):
        return math.exp(log_front) * _fraction(x, a, b) / a
    return 1.0 - math.exp(log_front) * _fraction(1 - x, b, a) / b


def _fraction(x: float, a: float, b: float) -> float:
    c, d = 1.0, 1.0 - (a + b) * x / (a + 1)
    d = 1.0 / (d if abs(d) > _TINY else _TINY)
    value = d
    for m in range(1, _MOST_STEPS):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        change = 1.0
        for step in (even, odd):
            d = 1.0 + step * d
            d = 1.0 / (d if abs(d) > _TINY else _TINY)
            c = 1.0 + step / c
            c = c if abs(c) > _TINY else _TINY
            change = c * d
            value *= change
        if abs(change - 1.0) < _CLOSE:
            break
    return value


@lru_cache(maxsize=4096)
def quantile(p: float, a: float, b: float) -> float:
    """The value below which a Beta(a, b) lies with probability `p`, by halving the interval."""
    if not 0 <= p <= 1:
        raise ValueError("a probability lies between 0 and 1")
    low, high = 0.0, 1.0
    for _ in range(60):
        middle = (low + high) / 2
        if cdf(middle, a, b) < p:
            low = middle
        else:
            high = middle
    return (low + high) / 2


@lru_cache(maxsize=4096)
def above(rate: float, successes: int, count: int) -> float:
    """The probability that the true rate is above `rate`, after `successes` in `count`."""
    return 1.0 - cdf(rate, successes + 1, count - successes + 1)


def interval(successes: int, count: int, width: float = 0.9) -> tuple[float, float]:
    """Between which rates the true one lies with probability `width`, tails alike."""
    a, b, tail = successes + 1, count - successes + 1, (1 - width) / 2
    return quantile(tail, a, b), quantile(1 - tail, a, b)
