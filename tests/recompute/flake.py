"""Figures of expandable flake, each from its readings by its definition."""

import math

from chemistry import molar_mass
from records import Reading, Session
from uncertain import coverage_factor, exp, log, mean, nominal

# Mean aperture and its tolerance, µm: ISO 3310-1:2016.
APERTURES = {500: 16, 300: 10, 180: 6.8, 150: 6, 75: 3.7}
PERCENT_PER_MMOL_PER_G = molar_mass('H2SO4') / 2 / 10


class Flake:
    def __init__(self, records, lot, record):
        self.records, self.lot, self.record = records, lot, record
        self.tests = record.get('tests') or {}
        self.grade = records.version('grades', record['grade'], record['made']) or {}
        self.figures, self.limits, self.each = {}, {}, {}

    def session(self, block, key):
        test = self.tests[block]
        rows = {**(self.grade.get('measured') or {}), **(self.grade.get('limits') or {})}
        method = test.get('method') or (rows.get(key) or {}).get('method')
        return Session(self.records, self.lot, test['tested'], method, test.get('instruments'))

    def repeated(self, block, key, unit, model, alike=False, keep=lambda one: True):
        """Mean over the readings of a block, one figure each."""
        test = self.tests.get(block)
        readings = [one for one in (test or {}).get('readings', []) if keep(one)]
        if not readings:
            return
        session = self.session(block, key)
        figures = []
        for index, reading in enumerate(readings):
            take = lambda name, unit, role, what=f'{key} {index + 1}': session.read(
                reading[name] if isinstance(reading, dict) else reading, unit, role, f'{what} {name}'
            )
            figures.append(model(session, take, reading))
        self.each[key] = figures
        self.figures[key] = session.mean(figures, key, unit, alike)

    def run(self):
        self.bulk()
        self.expansion()
        self.acid()
        self.repeated('slurry-ph', 'slurry-ph', '1', lambda _, take, __: take('', '1', 'ph'))
        self.furnace()
        if 'sieve' in self.tests:
            self.sieve()
        self.filtrate()
        self.sulfur()
        for key in ['residual-nitrate', 'residual-permanganate', 'residual-manganese']:
            self.leach(key)
        return self

    def bulk(self):
        for key in ['bulk-density', 'tapped-density']:
            self.repeated(key, key, 'g/mL', lambda _, take, __: take('mass', 'g', 'mass') / take('volume', 'mL', 'volume'))

    def expansion(self):
        volume = lambda _, take, __: take('volume', 'mL', 'volume') / take('mass', 'g', 'mass')
        self.repeated('expansion-volume', 'expansion-volume', 'mL/g', volume)
        for celsius in [400, 600, 800]:
            hot = lambda one, at=celsius: Reading(one['temperature'], '°C').value == at
            self.repeated('expansion-curve', f'expansion-at-{celsius}', 'mL/g', volume, alike=True, keep=hot)
        self.repeated('water-soak', 'soaked-expansion', 'mL/g', volume, alike=True)
        own = self.figures.get('expansion-volume')
        if own is None:
            return
        if 'soaked-expansion' in self.figures:
            self.figures['soak-kept'] = self.figures['soaked-expansion'] / own * 100
        stated = self.tests['expansion-volume'].get('bulk-density')
        loose = self.figures.get('bulk-density')
        if loose is None and stated:
            loose = self.records.stated(stated, 'g/mL', f'{self.lot} bulk density')
        if loose is not None:
            self.figures['expansion-ratio'] = own * loose

    def acid(self):
        test = self.tests.get('free-acid')
        if not test:
            return
        session = self.session('free-acid', 'free-acid')
        blanks = [session.read(one, 'mL', 'titre', f'blank {index}') for index, one in enumerate(test['blanks'])]
        # Blanks never lend the method's repeatability of results: their scatter is their own.
        blank = session.mean(blanks, 'blanks', 'mL')
        titrant = self.records.one('titrants', test['titrant'])
        name = f"{test['titrant']} concentration"
        u = Reading(titrant['expanded-uncertainty'], 'mol/L').value / float(titrant['coverage-factor'])
        strength = self.records.arithmetic.make(
            Reading(titrant['concentration'], 'mol/L').value, [(name, name, math.inf, u)]
        )
        part = 1.0
        if 'aliquot' in test and 'extract' in test:
            part = session.read(test['extract'], 'mL', 'volume', 'extract') / session.read(test['aliquot'], 'mL', 'volume', 'aliquot')
        amount = lambda net, mass: net * strength / mass * part
        self.repeated(
            'free-acid', 'free-acid', '%',
            lambda _, take, __: amount(take('titre', 'mL', 'titre') - blank, take('mass', 'g', 'mass')) * PERCENT_PER_MMOL_PER_G,
        )
        percent = self.figures['free-acid']
        self.figures['free-acid-amount'] = percent / PERCENT_PER_MMOL_PER_G
        masses = [Reading(one['mass'], 'g').value for one in test['readings']]
        least = nominal(amount(_least_titre(session, test), math.fsum(masses) / len(masses))) * PERCENT_PER_MMOL_PER_G
        if nominal(percent) < least:
            self.limits['free-acid'] = least
            self.limits['free-acid-amount'] = least / PERCENT_PER_MMOL_PER_G

    def furnace(self):
        dish = lambda take: [take(one, 'g', 'mass') for one in ('dish', 'before', 'after')]

        def moisture(_, take, __):
            empty, before, after = dish(take)
            return (before - after) / (before - empty) * 100

        self.repeated('moisture', 'moisture', '%', moisture)
        damp = lambda block: 0.0 if self.tests[block].get('sample') == 'dried' else self.figures['moisture'] / 100

        def volatile(_, take, __):
            empty, before, after = dish(take)
            dry = (before - empty) * (1 - damp('volatile'))
            return ((before - after) - (before - empty) * damp('volatile')) / dry * 100

        def ash(_, take, __):
            empty, before, after = dish(take)
            return (after - empty) / ((before - empty) * (1 - damp('ash'))) * 100

        self.repeated('volatile', 'volatile', '%', volatile)
        self.repeated('ash', 'ash', '%', ash)
        if 'ash' in self.figures and 'volatile' in self.figures:
            ash, gone = self.figures['ash'], self.figures['volatile']
            self.figures['fixed-carbon'] = 100 - (ash + gone)
            self.figures['devolatilised-carbon'] = 100 - ash / ((100 - gone) / 100)

    def sieve(self):
        stack = [int(Reading(one, 'µm').value) for one in self.tests['sieve']['sieves']]

        def masses(key, session, reading, index):
            read = lambda text, what: session.read(text, 'g', 'mass', f'{key} {index} {what}')
            found = [read(text, f'on {at}') for at, text in zip(stack, reading['retained'])]
            return read(reading['charged'], 'charged'), found, read(reading['pan'], 'pan')

        def figure(key, unit, of):
            session = self.session('sieve', key)
            runs = [masses(key, session, one, index) for index, one in enumerate(self.tests['sieve']['readings'])]
            figures = [of(*run) for run in runs]
            if all(one is not None for one in figures):
                self.figures[key] = session.mean(figures, key, unit)

        total = lambda parts: sum(parts[1:], parts[0])
        for at in stack:
            index = stack.index(at)
            figure(f'retained-{at}', '%', lambda _, found, pan: total(found[: index + 1]) / total([*found, pan]) * 100)
        figure('sieve-loss', '%', lambda charged, found, pan: (charged - total([*found, pan])) / charged * 100)
        for part in [10, 50, 90, 97]:
            figure(f'd{part}', 'µm', lambda _, found, pan: self.size(stack, found, pan, part))

    def size(self, stack, found, pan, part):
        """Linear in the logarithm of the aperture, between the sieves that the part lies between."""
        whole = sum([*found, pan][1:], found[0])
        finer = [1 - sum(found[1 : index + 1], found[0]) / whole for index in range(len(stack))]
        for index in range(len(stack) - 1):
            above, below = finer[index] * 100, finer[index + 1] * 100
            if nominal(above) >= part > nominal(below):
                coarse, fine = self.aperture(stack[index]), self.aperture(stack[index + 1])
                return exp(log(fine) + (part - below) / (above - below) * (log(coarse) - log(fine)))
        return None

    def aperture(self, at):
        name = f'aperture {at}'
        return self.records.arithmetic.make(float(at), [(name, name, math.inf, APERTURES[at] / math.sqrt(3))])

    def filtrate(self):
        test = self.tests.get('conductivity')
        if test:
            session = self.session('conductivity', 'conductivity')
            water = session.read(test['water'], 'µS/cm', 'conductivity', 'water') if 'water' in test else 0.0
            slope = self.records.arithmetic.make(0.02, [('alpha', 'alpha', math.inf, 0.005 / math.sqrt(3))])
            self.repeated(
                'conductivity', 'conductivity', 'µS/cm',
                lambda _, take, __: (take('conductivity', 'µS/cm', 'conductivity') - water)
                / (slope * (take('temperature', '°C', 'temperature') - 25) + 1),
            )
        self.repeated('onset', 'onset', '°C', lambda _, take, __: take('temperature', '°C', 'temperature'))

    def sulfur(self):
        parts = {'sulfur': molar_mass('S'), 'free-sulfate': molar_mass('SO4')}
        for key, part in parts.items():
            test = self.tests.get(key)
            if not test:
                continue
            session = self.session(key, key)
            blanks = [session.read(one, 'g', 'mass', f'{key} blank {i}') for i, one in enumerate(test.get('blanks', []))]
            blank = session.mean(blanks, f'{key} blanks', 'g') if blanks else 0.0
            self.repeated(
                key, key, '%',
                lambda _, take, __: (take('barium-sulfate', 'g', 'mass') - blank)
                * (100 * part / molar_mass('BaSO4')) / take('mass', 'g', 'mass'),
            )
        sulfur = self.figures.get('sulfur')
        reported = (self.record.get('reported') or {}).get('sulfur')
        if sulfur is None and reported and 'value' in reported:
            sulfur = reported_value(self.records, self.lot, 'sulfur', '%', reported)
        if sulfur is not None:
            self.figures['acid-equivalent'] = sulfur * (molar_mass('H2SO4') / molar_mass('S'))

    def leach(self, key):
        leach(self, key)


def leach(lot, key):
    """Leachable substance, mg/kg: what the extract holds beyond the blank, over the sample."""
    test = lot.tests.get(key)
    if not test:
        return
    session = lot.session(key, key)
    extract = session.read(test['extract'], 'mL', 'volume', f'{key} extract')
    blank = session.read(test['blank'], 'mg/L', 'photometer', f'{key} blank') if 'blank' in test else 0.0
    lot.repeated(
        key, key, 'mg/kg',
        lambda _, take, __: (take('concentration', 'mg/L', 'photometer') - blank) * extract / take('mass', 'g', 'mass'),
    )


def reported_value(records, lot, key, unit, report):
    """A figure measured elsewhere; without an uncertainty, its last digit is all that is known."""
    name = f"{lot} {key} reported {report['report']}"
    if 'expanded-uncertainty' not in report:
        return records.stated(report['value'], unit, name)
    u = Reading(report['expanded-uncertainty'], unit).value / float(report['coverage-factor'])
    return records.arithmetic.make(Reading(report['value'], unit).value, [(name, name, math.inf, u)])


def _least_titre(session, test):
    """Detection limit of the net titre, one-sided 95 % both ways, not below the burette's own step."""
    blanks = [Reading(one, 'mL') for one in test['blanks']]
    n, q = len(blanks), len(test['readings'])
    burette = session.records.one('instruments', session.instruments.get('titre', ''))
    step = Reading(burette['resolution'], 'mL').value if burette else max(one.step for one in blanks)
    scatter = 0.0
    if n > 1:
        centre = math.fsum(one.value for one in blanks) / n
        s = math.sqrt(math.fsum((one.value - centre) ** 2 for one in blanks) / (n - 1))
        scatter = coverage_factor(n - 1, 0.9) * s
    floor = coverage_factor(math.inf, 0.9) * step / math.sqrt(6)
    return 2 * max(scatter, floor) * math.sqrt(1 / q + 1 / n)
