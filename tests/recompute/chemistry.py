"""Molar masses (standard atomic weights 2021, abridged to five digits) and heats of sulfuric acid."""

import re

import numpy as np
from scipy.interpolate import PchipInterpolator

WEIGHTS = {'H': 1.008, 'C': 12.011, 'N': 14.007, 'O': 15.999, 'Na': 22.99, 'P': 30.974, 'S': 32.06, 'Ca': 40.078, 'Ba': 137.33}


def molar_mass(formula):
    """g/mol, of a formula without brackets."""
    return sum(WEIGHTS[symbol] * int(count or 1) for symbol, count in re.findall(r'([A-Z][a-z]?)(\d*)', formula))


# Water over acid in mol, heat of solution in kJ a mol of acid: NBS Circular 500 (1952).
CIRCULAR_500 = [
    (0, 0), (0.5, 15.73), (1, 28.07), (1.5, 36.9), (2, 41.92), (3, 48.99), (4, 54.06), (5, 58.03), (10, 67.03),
    (25, 72.3), (50, 73.34), (100, 73.97), (500, 76.73), (1000, 78.57), (5000, 84.43), (10000, 87.07),
    (50000, 93.64), (np.inf, 96.19),
]
# The same by Zeleznik, J. Phys. Chem. Ref. Data 20 (1991) 1157.
ZELEZNIK_1991 = [
    (0, 0), (0.25, 8.197), (0.5, 15.636), (0.75, 22.278), (1, 27.951), (1.5, 36.781), (2, 43.21), (3, 51.883),
    (4, 57.456), (5, 61.322), (6, 64.141), (7, 66.27), (8, 67.923), (10, 70.289), (15, 73.409), (20, 74.837),
    (25, 75.595), (30, 76.039), (40, 76.505), (50, 76.735), (75, 77.016), (100, 77.196), (150, 77.522),
    (200, 77.836), (300, 78.419), (500, 79.384), (1000, 81.048), (5000, 85.906), (10000, 88.207),
    (50000, 93.563), (np.inf, 95.28),
]
# Mass fraction of acid in %, heat capacity in J/(g K).
CAPACITY = [
    (0, 4.184), (10, 3.821), (20, 3.517), (30, 3.208), (40, 2.866), (50, 2.507), (60, 2.188), (70, 1.984),
    (80, 1.899), (90, 1.674), (93, 1.55), (96, 1.458), (100, 1.414),
]


def _folded(ratio):
    return 1.0 if np.isinf(ratio) else ratio / (ratio + 1.8)


# Shape-preserving cubics, over r / (r + 1.8) where a curve runs to infinite dilution.
HEATS = [PchipInterpolator([_folded(r) for r, _ in table], [q for _, q in table]) for table in (CIRCULAR_500, ZELEZNIK_1991)]
HEAT_CAPACITY = PchipInterpolator(*zip(*CAPACITY))
