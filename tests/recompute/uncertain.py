"""Values that carry their uncertainty, in two ways that share nothing with the program's own.

Linear: a value and its exact derivatives by every cause, carried through each operation
(forward automatic differentiation). Drawn: an array of draws of every cause, the first of them
the undisturbed value (Monte Carlo, JCGM 101:2008). The formulas are written once for both.
"""

import math
import zlib

import numpy as np
from scipy import optimize, stats


class Linear:
    """A value with what one standard uncertainty of each cause does to it."""

    # Keeps numpy from taking the operators over.
    __array_ufunc__ = None

    def __init__(self, value, terms):
        self.value = value
        self.terms = terms

    def __add__(self, other):
        return _joined(self, other, lambda a, b: a + b, lambda a, b: (1.0, 1.0))

    def __sub__(self, other):
        return _joined(self, other, lambda a, b: a - b, lambda a, b: (1.0, -1.0))

    def __rsub__(self, other):
        return _joined(other, self, lambda a, b: a - b, lambda a, b: (1.0, -1.0))

    def __mul__(self, other):
        return _joined(self, other, lambda a, b: a * b, lambda a, b: (b, a))

    def __truediv__(self, other):
        return _joined(self, other, lambda a, b: a / b, lambda a, b: (1 / b, -a / b / b))

    def __rtruediv__(self, other):
        return _joined(other, self, lambda a, b: a / b, lambda a, b: (1 / b, -a / b / b))

    __radd__ = __add__
    __rmul__ = __mul__


def _joined(a, b, of, partials):
    (x, left), (y, right) = _parts(a), _parts(b)
    by_a, by_b = partials(x, y)
    terms = {cause: by_a * u for cause, u in left.items()}
    for cause, u in right.items():
        terms[cause] = terms.get(cause, 0.0) + by_b * u
    return Linear(of(x, y), terms)


def _parts(x):
    return (x.value, x.terms) if isinstance(x, Linear) else (float(x), {})


class Arithmetic:
    """Makes values of one of the two kinds, and keeps what is known of each cause."""

    def __init__(self, draws):
        """`draws`: 0 for the linear kind."""
        self.draws = draws
        self.causes = {}

    def make(self, value, causes):
        """A value with its causes: (name, pool, degrees of freedom, standard uncertainty)."""
        terms = {}
        for name, pool, df, u in causes:
            if u == 0:
                continue
            known = self.causes.setdefault(name, (pool, df))
            if known != (pool, df):
                raise ValueError(f'{name} is in two pools: {known} and {(pool, df)}')
            terms[name] = terms.get(name, 0.0) + u
        if self.draws == 0:
            return Linear(value, terms)
        # Named draws: what two figures share is drawn alike for both, and nothing is stored.
        return value + sum((u * self._drawn(name) for name, u in terms.items()), np.zeros(self.draws + 1))

    def _drawn(self, name):
        return np.append(0.0, np.random.default_rng(zlib.crc32(name.encode())).standard_normal(self.draws))


def nominal(x):
    """The value that nothing disturbs."""
    if isinstance(x, Linear):
        return x.value
    return float(x[0]) if isinstance(x, np.ndarray) else float(x)


def _apply(x, of, slope):
    if isinstance(x, Linear):
        by = slope(x.value)
        return Linear(of(x.value), {cause: by * u for cause, u in x.terms.items()})
    return of(x)


def log(x):
    return _apply(x, np.log, lambda v: 1 / v)


def exp(x):
    return _apply(x, np.exp, np.exp)


def through(curve, x):
    """A scipy interpolator at x."""
    return _apply(x, lambda v: curve(v) if np.ndim(v) else float(curve(v)), lambda v: float(curve(v, 1)))


def piecewise(xs, ys, x):
    """Straight lines between the nodes of a table."""
    slopes = np.diff(ys) / np.diff(xs)
    at = lambda v: float(slopes[min(np.searchsorted(xs, v, 'left'), len(slopes)) - 1])
    return _apply(x, lambda v: np.interp(v, xs, ys), at)


def root(of, by, x, y, low, high):
    """Solve of(x, y, z) = 0 for z; `by` gives its derivatives by x, y and z."""
    (a, left), (b, right) = (_parts(x), _parts(y)) if isinstance(x, Linear) else ((x, {}), (y, {}))
    if not isinstance(x, Linear):
        return optimize.newton(lambda z: of(a, b, z), np.full(len(a), (low + high) / 2), lambda z: by(a, b, z)[2])
    z = optimize.brentq(lambda one: of(a, b, one), low, high, xtol=1e-15, rtol=1e-15)
    along, across, own = by(a, b, z)
    moved = _joined(x, y, lambda *_: z, lambda *_: (-along / own, -across / own))
    return moved


def mean(values):
    return sum(values[1:], values[0]) / len(values)


def standard_uncertainty(x):
    if isinstance(x, Linear):
        return math.sqrt(sum(u * u for u in x.terms.values()))
    return float(np.std(x[1:], ddof=1)) if isinstance(x, np.ndarray) else 0.0


def degrees_of_freedom(x, causes):
    """Welch-Satterthwaite over the pools (JCGM 100:2008, G.4.1), truncated; infinity where unlimited."""
    pools = {}
    for cause, u in x.terms.items():
        pool = causes[cause]
        pools[pool] = pools.get(pool, 0.0) + u * u
    total = sum(pools.values())
    under = sum(variance**2 / df for (_, df), variance in pools.items())
    found = math.inf if under == 0 else total**2 / under
    return math.inf if found >= 1e7 else math.floor(float(f'{found:.12g}'))


def coverage_factor(df, probability=0.95):
    tail = (1 + probability) / 2
    return float(stats.norm.ppf(tail) if math.isinf(df) else stats.t.ppf(tail, df))
