"""The workshop's records, read from their YAML without the program: texts, units, instruments."""

import functools
import math
import re
from decimal import Decimal
from pathlib import Path

import yaml

from uncertain import mean, nominal

# Units by what they measure, in one base unit each (BIPM, The International System of Units, 2019).
UNITS = {
    'kg': ('mass', '1000'), 'g': ('mass', '1'), 'mg': ('mass', '0.001'),
    'm³': ('volume', '1e6'), 'L': ('volume', '1000'), 'mL': ('volume', '1'),
    'm': ('length', '1000'), 'cm': ('length', '10'), 'mm': ('length', '1'), 'µm': ('length', '0.001'),
    'h': ('time', '3600'), 'min': ('time', '60'), 's': ('time', '1'),
    '°C': ('temperature', '1'), '%': ('fraction', '1'), 'mg/kg': ('fraction', '1e-4'),
    'g/mL': ('density', '1'), 'g/cm³': ('density', '1'), 'mg/L': ('density', '1e-6'), 'mL/g': ('specific volume', '1'),
    'mol/L': ('amount', '1'), 'N': ('force', '1'), 'N/mm': ('force per width', '1'), 'MPa': ('pressure', '1'),
    'mm/m': ('slope', '1'), 'µm/mm': ('slope', '1'),
    'mΩ': ('resistance', '1'), 'mV': ('voltage', '1'), 'mA': ('current', '1'),
    'µS/cm': ('conductivity', '1'), 'kPa': ('pressure', '0.001'),
    'mg/(s·m)': ('leak rate', '1'), 'W/(m·K)': ('thermal conductivity', '1'),
    'mm²/s': ('thermal diffusivity', '1'), 'J/(g·K)': ('heat capacity', '1'), '1': ('number', '1'),
}
QUANTITY = re.compile(r'^([+-]?\d+(?:\.\d+)?)\s*(\S.*)?$')


class Reading:
    """A number with a unit as it was written: its value and the step of its last digit, in `unit`."""

    def __init__(self, text, unit):
        match = QUANTITY.match(text.strip())
        if not match:
            raise ValueError(f'not a quantity: {text}')
        digits, own = Decimal(match[1]), match[2] or '1'
        if UNITS[own][0] != UNITS[unit][0]:
            raise ValueError(f'{text} is not in {unit}')
        factor = Decimal(UNITS[own][1]) / Decimal(UNITS[unit][1])
        self.value = float(digits * factor)
        self.step = float(Decimal(1).scaleb(digits.as_tuple().exponent) * factor)


def is_of(text, unit):
    """Whether a text's unit measures what `unit` does."""
    own = QUANTITY.match(text.strip())[2] or '1'
    return UNITS[own][0] == UNITS[unit][0]


@functools.cache
def _load(folder):
    # The base loader leaves every value the text it is: 9.50 mm keeps its zero.
    loader = getattr(yaml, 'CBaseLoader', yaml.BaseLoader)
    read = lambda path: yaml.load(path.read_text(encoding='utf-8'), Loader=loader)
    kinds = {}
    for path in sorted(Path(folder).glob('*/*.yaml')):
        record = read(path)
        # A panel names the lot of its flake.
        own = path.stem if path.parent.name == 'panels' else None
        number = own or record.get('lot') or record.get('id') or path.stem
        kinds.setdefault(path.parent.name, {}).setdefault(number, []).append(record)
    return kinds, read(Path(folder, 'producer.yaml'))


class Records:
    """All records of a content folder by kind and number; every value is a text, as written."""

    def __init__(self, folder, arithmetic):
        self.arithmetic = arithmetic
        self.kinds, self.producer = _load(folder)

    def one(self, kind, number):
        return self.kinds[kind].get(number, [None])[0]

    def version(self, kind, number, day):
        """The revision or edition in force on a day."""
        valid = [one for one in self.kinds[kind].get(number, []) if one['valid-from'] <= day]
        return max(valid, key=lambda one: one['valid-from'], default=None)

    def stated(self, text, unit, name):
        """A figure somebody else found: within one step of its last digit either way."""
        reading = Reading(text, unit)
        return self.arithmetic.make(reading.value, [(name, name, math.inf, reading.step / math.sqrt(3))])


class Session:
    """The readings of one test or step: its day, method and instruments."""

    def __init__(self, records, lot, day, method, instruments):
        self.records, self.lot, self.day = records, lot, day
        self.method = records.version('methods', method, day) if method else None
        self.instruments = {**((self.method or {}).get('instruments') or {}), **(instruments or {})}

    def read(self, text, unit, role, what):
        """A reading with its instrument's calibration and the step it can show."""
        reading = Reading(text, unit)
        instrument = self.records.one('instruments', self.instruments.get(role, ''))
        make = self.records.arithmetic.make
        if instrument is None:
            return make(reading.value, [_step('written digits', self.lot, what, reading.step)])
        step = max(reading.step, Reading(instrument['resolution'], unit).value)
        return make(
            reading.value,
            [*_calibration(instrument, self.day, reading.value, unit), _step(instrument['id'], self.lot, what, step)],
        )

    def mean(self, figures, key, unit, alike=False, name=None):
        """Mean of repeated readings, with the method's repeatability or else their own scatter."""
        n, name = len(figures), name or f'{self.lot} {key}'
        value = nominal(mean(figures))
        known = self._repeatability(value, key, unit, alike)
        if known:
            s, df, pool = known
        elif n > 1:
            s, df, pool = _deviation([nominal(one) for one in figures]), n - 1, f'{name} scatter'
        else:
            return mean(figures)
        # An independent zero that carries the scatter of the mean.
        return mean(figures) + self.records.arithmetic.make(0.0, [(f'{name} mean', pool, df, s / math.sqrt(n))])

    def _repeatability(self, value, key, unit, alike):
        method = self.method or {}
        pool = f"{method.get('id')} repeatability"
        relative, absolute = method.get('relative-repeatability'), method.get('repeatability')
        fits = method.get('quantity') == key or alike
        if fits and relative:
            return Reading(relative['s'], '%').value / 100 * abs(value), int(relative['df']), pool
        if not (fits and absolute):
            return None
        text, df = absolute['s'], int(absolute['df'])
        if text.endswith('%') and unit != '%':
            return Reading(text, '%').value / 100 * abs(value), df, pool
        return (Reading(text, unit).value, df, pool) if is_of(text, unit) else None


def _deviation(values):
    centre = math.fsum(values) / len(values)
    return math.sqrt(math.fsum((x - centre) ** 2 for x in values) / (len(values) - 1))


def _step(instrument, lot, what, step):
    """Half a step either way is equally likely: a rectangular distribution."""
    return (f'{instrument} step: {lot} {what}', f'{instrument} step', math.inf, step / 2 / math.sqrt(3))


def _calibration(instrument, day, value, unit):
    """What all readings of an instrument have in common."""
    all_ = [*instrument.get('earlier-calibrations', []), *filter(None, [instrument.get('calibration')])]
    if not all_:
        return
    before = [one for one in all_ if one['on'] <= day]
    found = max(before, key=lambda one: one['on']) if before else min(all_, key=lambda one: one['on'])
    size = lambda text: Reading(text, '%').value / 100 * abs(value) if text.endswith('%') and unit != '%' else Reading(text, unit).value
    name = f"{instrument['id']} calibrated {found['on']}"
    if 'expanded-uncertainty' in found:
        yield (name, name, math.inf, size(found['expanded-uncertainty']) / float(found['coverage-factor']))
    if 'tolerance' in found:
        width = math.sqrt(6 if found.get('distribution') == 'triangular' else 3)
        yield (f'{name} tolerance', f'{name} tolerance', math.inf, size(found['tolerance']) / width)
